"""What works a calculator: the paper it writes on, the chain it stands in, its range."""
