"""Photos of readings: kept on the device, small, without their place; out and in as one zip."""

from __future__ import annotations

import base64
import csv
import io
import json
import zipfile
from pathlib import Path

import pytest
from browser.pages import eventually, open_page, stored, until
from playwright.sync_api import Browser, Page
from server import Server

RECORD = "calculators/commissioning-record/"
SECRET = b"GPS-OF-THE-OWNERS-HOME"
READING = "commissioning-record#kit-amps"
KEPT = """async () => {
    const base = await new Promise((done) => {
        const asked = indexedDB.open('downflow-photos', 1);
        asked.onsuccess = () => done(asked.result);
    });
    const all = await new Promise((done) => {
        const asked = base.transaction('photos').objectStore('photos').getAll();
        asked.onsuccess = () => done(asked.result);
    });
    base.close();
    return Promise.all(all.map(async (p) => {
        const picture = await createImageBitmap(p.blob);
        return {id: p.id, of: p.of, job: p.job, width: picture.width, height: picture.height,
                text: new TextDecoder('latin1').decode(await p.blob.arrayBuffer())};
    }));
}"""


@pytest.fixture
def photo(page: Page, tmp_path: Path, server: Server) -> Path:
    """A camera's file: large, and with a place written into it."""
    page.goto(server.address)
    drawn = base64.b64decode(page.evaluate("""() => {
        const sheet = document.createElement('canvas');
        [sheet.width, sheet.height] = [2400, 1800];
        const pen = sheet.getContext('2d');
        for (let n = 0; n < 400; n += 1) {
            pen.fillStyle = `hsl(${n * 7} 60% 50%)`;
            pen.fillRect((n * 97) % 2400, (n * 61) % 1800, 120, 90);
        }
        return sheet.toDataURL('image/jpeg').split(',')[1];
    }"""))
    inner = b"Exif\0\0" + SECRET
    place = b"\xff\xe1" + (len(inner) + 2).to_bytes(2, "big") + inner
    file = tmp_path / "camera.jpg"
    file.write_bytes(drawn[:2] + place + drawn[2:])
    return file


def take(page: Page, photo: Path, of: str = READING) -> None:
    with page.expect_file_chooser() as chooser:
        page.locator(f'[data-photo-add="{of}"]').first.click()
    chooser.value.set_files(photo)
    page.locator(f'figure[data-of="{of}"] img').first.wait_for()


def test_a_photo_is_scaled_down_and_loses_its_place(server: Server, page: Page, photo: Path,
                                                    watch):
    assert SECRET in photo.read_bytes()
    open_page(page, server, RECORD)
    take(page, photo)
    kept = page.evaluate(KEPT)
    assert [k["of"] for k in kept] == [READING]
    assert max(kept[0]["width"], kept[0]["height"]) == 1600
    assert kept[0]["width"] / kept[0]["height"] == pytest.approx(2400 / 1800, rel=0.01)
    assert SECRET.decode() not in kept[0]["text"]
    assert [p["id"] for p in stored(page)["photos"]] == [kept[0]["id"]]
    assert kept[0]["job"] == stored(page)["id"]
    assert "data:image" not in json.dumps(stored(page))
    assert watch.foreign(server) == []
    assert watch.policy_complaints() == []


def test_a_photo_can_be_taken_off_again(server: Server, page: Page, photo: Path):
    open_page(page, server, RECORD)
    take(page, photo, "photo#crossover")
    page.locator("[data-photo-gone]").click()
    eventually(lambda: page.evaluate(KEPT) == [])
    eventually(lambda: stored(page)["photos"] == [])
    eventually(lambda: page.locator("figure[data-photo]").count() == 0)


def test_a_job_with_photos_goes_out_and_comes_in_as_one_zip(
        server: Server, page: Page, browser: Browser, photo: Path, tmp_path: Path):
    open_page(page, server, RECORD)
    take(page, photo)
    take(page, photo, "photo#gauge")
    ids = [p["id"] for p in stored(page)["photos"]]
    open_page(page, server, "job-sheet/")
    page.locator("df-jobs summary").click()
    with page.expect_download() as download:
        page.locator('df-jobs [data-do="export"]').click()
    file = tmp_path / "job.zip"
    download.value.save_as(file)
    assert download.value.suggested_filename.endswith(".zip")
    with zipfile.ZipFile(file) as zipped:
        assert zipped.testzip() is None
        assert sorted(zipped.namelist()) == sorted(["job.json", *(f"photos/{i}.jpg" for i in ids)])
        assert json.loads(zipped.read("job.json")) == stored(page)
        assert all(SECRET not in zipped.read(n) for n in zipped.namelist())
    other = browser.new_context()
    there = other.new_page()
    open_page(there, server, "job-sheet/")
    there.locator("df-jobs summary").click()
    there.locator("df-jobs input[type=file]").set_input_files(file)
    said = there.locator('df-jobs [data-piece="say"]')
    eventually(lambda: "is here and open" in said.inner_text())
    assert stored(there) == stored(page)
    assert sorted(k["id"] for k in there.evaluate(KEPT)) == sorted(ids)
    open_page(there, server, RECORD)
    until(there, "document.querySelector('df-record[data-mine]')")
    there.locator(f'figure[data-of="{READING}"] img').wait_for()
    other.close()


def test_a_zip_without_a_job_sheet_changes_nothing(server: Server, page: Page, tmp_path: Path):
    file = tmp_path / "other.zip"
    with zipfile.ZipFile(file, "w") as zipped:
        zipped.writestr("holiday.txt", "no job")
    open_page(page, server, "job-sheet/")
    page.locator("df-jobs summary").click()
    page.locator("df-jobs input[type=file]").set_input_files(file)
    said = page.locator('df-jobs [data-piece="say"]')
    eventually(lambda: "could not be read" in said.inner_text())
    assert page.locator("df-jobs [data-job]").count() == 0


def test_the_permit_sheet_is_saved_as_csv(server: Server, page: Page, tmp_path: Path):
    open_page(page, server, "permit-sheet/")
    with page.expect_download() as download:
        page.locator("[data-csv]").click()
    file = tmp_path / "sheet.csv"
    download.value.save_as(file)
    rows = list(csv.reader(io.StringIO(file.read_text("utf-8-sig"))))
    assert rows[0] == ["section", "item", "value", "unit", "from"]
    assert ["What goes in", "Equipment, as you call it", "Model A", "", "data sheet"] in rows


def test_a_hold_point_has_a_camera(server: Server, page: Page, photo: Path):
    open_page(page, server, "procedures/")
    first = page.locator(".md-content a[href*='procedures/'], .md-content a.df-item").first
    address = first.get_attribute("href")
    assert address
    page.goto(page.evaluate("a => new URL(a, location.href).href", address))
    button = page.locator("section.df-hold .df-hold__photos button").first
    button.wait_for()
    with page.expect_file_chooser() as chooser:
        button.click()
    chooser.value.set_files(photo)
    eventually(lambda: "1 kept" in button.inner_text(), 60)
