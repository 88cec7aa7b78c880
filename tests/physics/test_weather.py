"""Weather files: whole or refused, with the line that is wrong; against an independent reader."""

import contextlib
import gzip
import io
from pathlib import Path

import pvlib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from downflow import weather

approx = pytest.approx

DATA = Path(__file__).parents[1] / "data"


def _text(name):
    with gzip.open(DATA / name, "rt", encoding="utf-8") as file:
        return file.read()


TMY3 = _text("724666_golden_co_tmy3.csv.gz")
EPW = _text("727720_helena_mt_tmy3.epw.gz")


def test_an_epw_file_reads_as_the_library_reads_it():
    year = weather.parse(EPW)
    frame, place = pvlib.iotools.read_epw(io.StringIO(EPW))
    assert (year.format, year.region, year.station) == ("EPW", "MT", "727720")
    assert year.elevation_ft == approx(place["altitude"] / 0.3048)
    assert [h.dry_bulb_f for h in year.hours] == approx(list(frame["temp_air"] * 1.8 + 32))
    assert [h.dew_point_f for h in year.hours] == approx(list(frame["temp_dew"] * 1.8 + 32))
    assert [h.humidity for h in year.hours] == approx(list(frame["relative_humidity"] / 100))
    assert [h.pressure_psia for h in year.hours] == approx(
        list(frame["atmospheric_pressure"] / 6894.757), rel=1e-6
    )
    assert [h.wind_mph for h in year.hours] == approx(list(frame["wind_speed"] * 2.2369363))


def test_a_tmy3_file_reads_as_the_library_reads_it():
    year = weather.parse(TMY3)
    frame, place = pvlib.iotools.read_tmy3(io.StringIO(TMY3), map_variables=True)
    assert (year.format, year.region, year.station) == ("TMY3", "CO", "724666")
    assert year.elevation_ft == approx(place["altitude"] / 0.3048)
    assert [h.dry_bulb_f for h in year.hours] == approx(list(frame["temp_air"] * 1.8 + 32))
    assert [h.pressure_psia for h in year.hours] == approx(
        list(frame["pressure"] / 68.94757), rel=1e-6
    )


def test_months_have_their_hours():
    assert [len(m) for m in weather.parse(EPW).months_f()] == [
        744, 672, 744, 720, 744, 720, 744, 744, 720, 744, 720, 744]


def test_line_ends_and_a_byte_order_mark_do_not_matter():
    assert weather.parse("\ufeff" + EPW.replace("\n", "\r\n")) == weather.parse(EPW)


def _with(text, line, change):
    lines = text.splitlines()
    lines[line - 1] = change(lines[line - 1])
    return "\n".join(lines)


def _cell(column, value):
    def change(line):
        cells = line.split(",")
        cells[column] = value
        return ",".join(cells)

    return change


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("", 1, "not an hourly weather file"),
        ("<html>not found</html>", 1, "not an hourly weather file"),
        (_with(EPW, 100, _cell(6, "99.9")), 100, "missing"),
        (_with(EPW, 100, _cell(6, "warm")), 100, "“warm” is not a number"),
        (_with(EPW, 100, _cell(6, "nan")), 100, "not a number"),
        (_with(EPW, 100, _cell(6, "1e3")), 100, "not a number"),
        (_with(EPW, 100, _cell(6, "212")), 100, "must lie within"),
        (_with(EPW, 100, _cell(1, "13")), 100, "month"),
        (_with(EPW, 100, _cell(3, "7")), 100, "out of order"),
        (_with(EPW, 100, lambda line: line[:40]), 100, "columns"),
        (_with(EPW, 8, _cell(2, "4")), 8, "records per hour"),
        (_with(EPW, 1, lambda _: "LOCATION,Here"), 1, "10 needed"),
        (_with(EPW, 8, lambda _: "DATA"), 8, "DATA PERIODS"),
        ("\n".join(EPW.splitlines()[:5000]), 5000, "8,760"),
        ("\n".join(EPW.splitlines()[:6]), 6, "eight header lines"),
        (_with(TMY3, 77, _cell(0, "1/1")), 77, "MM/DD/YYYY"),
        (_with(TMY3, 77, _cell(1, "03:30")), 77, "whole hour"),
        (_with(TMY3, 2, lambda line: line.replace("Pressure (mbar)", "P")), 2, "Pressure"),
        (_with(TMY3, 77, _cell(31, "-9900")), 77, "missing"),
        (_with(TMY3, 1, lambda _: "724666"), 1, "needed"),
    ],
)
def test_a_wrong_file_is_refused_with_its_line(text, line, words):
    with pytest.raises(weather.WeatherFileError, match=words) as caught:
        weather.parse(text)
    assert caught.value.line == line
    assert str(caught.value).startswith(f"line {line}: ")


def test_humidity_pressure_and_wind_may_be_missing():
    text = _with(EPW, 9, lambda line: _cell(9, "999999")(_cell(8, "999")(_cell(7, "99.9")(line))))
    hour = weather.parse(_with(text, 9, _cell(21, "999"))).hours[0]
    assert hour[4:] == (None, None, None, None)


def test_a_file_that_is_far_too_long_is_refused():
    with pytest.raises(weather.WeatherFileError, match="at most"):
        weather.parse_epw("LOCATION," + "x" * 7_000_000)


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=400))
def test_no_text_brings_anything_but_a_year_or_a_refusal(text):
    for parse in (weather.parse, weather.parse_epw, weather.parse_tmy3):
        with pytest.raises(weather.WeatherFileError):
            parse(text)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 8767), st.text(max_size=60))
def test_a_spoilt_line_is_named(line, text):
    lines = EPW.splitlines()
    spoilt = "\n".join([*lines[:line], text.replace("\n", " "), *lines[line + 1 :]])
    if text.replace("\n", " ") == lines[line]:
        return
    year = None
    with contextlib.suppress(weather.WeatherFileError):
        year = weather.parse(spoilt)
    assert year is None or len(year.hours) == 8760
