"""Downflow: the numbers behind a fuel-furnace-to-heat-pump retrofit of a manufactured home."""

__version__ = "0.1.0"
