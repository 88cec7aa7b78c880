"""What a usual cold-climate heat pump makes."""

import pytest
from pytest import approx

from downflow.physics import first_look


def test_all_of_it_at_the_rating_point_and_its_share_in_the_cold():
    assert first_look.kept_share(47, 0.8) == approx(1)
    assert first_look.kept_share(5, 0.8) == approx(0.8)


def test_colder_is_less_and_never_below_nothing():
    assert first_look.kept_share(-20, 0.8) < first_look.kept_share(0, 0.8)
    assert first_look.kept_share(-200, 0.3) == 0


@pytest.mark.parametrize("share", [0.0, -0.1, 1.01])
def test_a_share_that_cannot_be_is_refused(share):
    with pytest.raises(ValueError, match="share"):
        first_look.kept_share(5, share)
