"""Chance from a seed: the same on every machine, because it is made of whole numbers alone."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")

_WORD = (1 << 64) - 1
_STRIDE = 0x9E3779B97F4A7C15
_FIRST = 0xBF58476D1CE4E5B9
_SECOND = 0x94D049BB133111EB
LARGEST_SEED = 999_999_999


class Chance:
    """A row of draws. Two with one seed draw the same.

    A counter moves by a fixed stride; each draw is that counter with its bits mixed.
    """

    def __init__(self, seed: int, *words: str) -> None:
        self._state = seed & _WORD
        for word in words:
            for byte in word.encode():
                self._state = (self._state * 0x100000001B3 ^ byte) & _WORD

    def word(self) -> int:
        """The next 64 bits."""
        self._state = (self._state + _STRIDE) & _WORD
        z = self._state
        z = ((z ^ (z >> 30)) * _FIRST) & _WORD
        z = ((z ^ (z >> 27)) * _SECOND) & _WORD
        return z ^ (z >> 31)

    def below(self, count: int) -> int:
        """A whole number from 0, below `count`."""
        if count < 1:
            raise ValueError(f"a draw of {count} things")
        return self.word() % count

    def whole(self, low: int, high: int, step: int = 1) -> int:
        """A whole number from `low` to `high`, both possible, in steps."""
        return low + step * self.below((high - low) // step + 1)

    def tenths(self, low: int, high: int) -> float:
        """A number of tenths: `tenths(5, 12)` draws from 0.5 to 1.2."""
        return self.whole(low, high) / 10

    def hundredths(self, low: int, high: int) -> float:
        """A number of hundredths."""
        return self.whole(low, high) / 100

    def yes(self, of_hundred: int) -> bool:
        """True so many times in a hundred."""
        return self.below(100) < of_hundred

    def pick(self, things: Sequence[T]) -> T:
        """One of several things."""
        return things[self.below(len(things))]

    def some(self, things: Sequence[T], count: int) -> list[T]:
        """Several different things, in the order drawn."""
        left = list(things)
        return [left.pop(self.below(len(left))) for _ in range(min(count, len(left)))]


def a_seed(value: object) -> int:
    """A seed that somebody gave: a whole number from 0 on.

    Raises:
        ValueError: It is none.
    """
    if isinstance(value, bool) or not isinstance(value, int):
        raise ValueError("the number of a practice home is a whole number")
    if not 0 <= value <= LARGEST_SEED:
        raise ValueError(f"the number of a practice home is 0 to {LARGEST_SEED:,}")
    return value
