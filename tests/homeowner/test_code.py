"""The QR code: read back by a decoder library from a coarse and blotted print."""

import random
import re

import numpy as np
import pytest
import zxingcpp

from downflow import homeowner as link
from downflow.demo import demo_job

SITE = "https://handbook.example.org/downflow/"
DPI = 203


def _modules(svg):
    """The code's squares, from the path of its drawing."""
    size = int(re.search(r'viewBox="0 0 (\d+) ', svg).group(1))
    grid = np.zeros((size, size), dtype=bool)
    for x, y, run in re.findall(r"M(\d+) (\d+)h(\d+)v1", svg):
        grid[int(y), int(x):int(x) + int(run)] = True
    return grid


def _printed(svg, width_mm):
    """The drawing at 203 dots an inch, as a label printer makes it: each dot black or white."""
    grid = _modules(svg)
    dots = round(width_mm / 25.4 * DPI)
    # The middle of each dot decides.
    at = ((np.arange(dots) + 0.5) * grid.shape[0] / dots).astype(int)
    return np.where(grid[np.ix_(at, at)], 0, 255).astype(np.uint8)


def _blotted(image, share, blots, seed, ink):
    """Round stains over a share of the whole picture, clear of the three corner squares.

    A stain on a corner square blinds any code of this kind, whatever its level: the label
    prints everything vital in words besides.
    """
    rng = random.Random(seed)
    out = image.copy()
    height, width = out.shape
    radius = (share * height * width / blots / np.pi) ** 0.5
    corner = 12 / 77 * width + radius  # seven modules and the quiet zone, with one to spare
    y, x = np.ogrid[:height, :width]
    covered = np.zeros_like(out, dtype=bool)
    while blots:
        cy, cx = rng.uniform(radius, height - radius), rng.uniform(radius, width - radius)
        left, right = cx < corner, cx > width - corner
        top, bottom = cy < corner, cy > height - corner
        stain = (y - cy) ** 2 + (x - cx) ** 2 <= radius * radius
        if (left and top) or (left and bottom) or (right and top) or (covered & stain).any():
            continue
        covered |= stain
        blots -= 1
    out[covered] = ink
    assert covered.mean() >= share - 0.002
    return out


def _read(image):
    found = zxingcpp.read_barcodes(np.pad(image, 20, constant_values=255))
    return found[0].text if found else None


@pytest.mark.parametrize("ink", [0, 255])
@pytest.mark.parametrize("blots", [1, 2, 3])
@pytest.mark.parametrize("seed", range(6))
def test_a_stained_label_is_still_read_and_equals_the_link(seed, blots, ink):
    address = link.link(demo_job(), SITE)
    image = _printed(link.qr_svg(address), link.qr_width_mm(address))
    assert _read(_blotted(image, 0.05, blots, seed, ink)) == address


def test_a_clean_label_is_read():
    address = link.link(demo_job(), SITE)
    assert _read(_printed(link.qr_svg(address), link.qr_width_mm(address))) == address


def test_a_module_is_at_least_four_tenths_of_a_millimetre():
    address = link.link(demo_job(), SITE)
    size = _modules(link.qr_svg(address)).shape[0]
    assert size == link.qr_modules(address)
    assert link.qr_width_mm(address) / size == pytest.approx(0.4)


def test_the_code_has_its_quiet_zone_and_no_style():
    svg = link.qr_svg(link.link(demo_job(), SITE))
    grid = _modules(svg)
    assert not grid[:4].any()
    assert not grid[:, :4].any()
    assert not grid[-4:].any()
    assert "style" not in svg
    assert "<path" in svg


@pytest.mark.parametrize("address", ["h/#1.abc", "", "ftp://x/h/#1.a", "javascript:alert(1)//x/",
                                     "https:// x/"])
def test_without_a_whole_address_no_code_is_made(address):
    with pytest.raises(ValueError, match="missing"):
        link.qr_svg(address)
