"""Practice: homes, questions and faults to be wrong on first.

Everything follows from a seed, from the job sheet's facts and from the same physics as the
calculators. What a learner is asked is answered by the plan; what is planted is found again by a
diagnoser that sees only what a learner can read.
"""
