"""A hundred thousand fragments that somebody made up: each gives a page or a plain message."""

import base64
import random
import re

from homeowner.parsed import spots, told

from downflow import homeowner as link

COUNT = 100_000
HOSTILE = ("<img src=x onerror=alert(1)>", "javascript:alert(1)", "</script><script>alert(1)",
           "${alert(1)}", "{{7*7}}", "\u202eabc", "__proto__", "constructor", "' or 1=1 --",
           "\x00", "%00", "é" * 30, "🙂" * 20, "A" * 2000, "../../etc", "data:text/html,x",
           "\ufeff", "\ud7ff", "toString", "&lt;b&gt;", "\u2028")
ATTRIBUTE = re.compile(r"[MLHVZ0-9 .]*")


def _signed(body: bytes) -> str:
    """A fragment whose check is right, whatever is in it."""
    total = 0
    for byte in body:
        total = (total * 131 + byte + 1) % 262_144
    check = "".join(link.ALPHABET[total >> shift & 63] for shift in (12, 6, 0))
    return "#1." + base64.urlsafe_b64encode(check.encode() + b"\n" + body).decode().rstrip("=")


def _hostile(rng, slots):
    """Good check, bad slots: what only someone who reads this code would send."""
    parts = [slots.get(n, "") for n in link.NAMES]
    for _ in range(rng.randint(1, 4)):
        parts[rng.randrange(len(parts))] = rng.choice(HOSTILE)
    if rng.random() < 0.2:
        parts += [rng.choice(HOSTILE)] * rng.randint(1, 5)
    body = "\n".join(parts).encode("utf-8", "surrogatepass")
    if rng.random() < 0.2:
        at = rng.randrange(len(body))
        body = body[:at] + bytes([rng.randrange(256)]) + body[at + 1:]
    return _signed(body)


def fragments(demo_slots):
    """Random letters, cuts and changes of a good link, and slots put together to do harm."""
    rng = random.Random(20260914)
    whole = link.encode(demo_slots)
    made = []
    letters = link.ALPHABET + "%<>\"'&;.#= \n\x00é"
    while len(made) < COUNT:
        kind = rng.randrange(6)
        if kind == 0:
            made.append("#" + "".join(rng.choices(letters, k=rng.randint(0, 120))))
        elif kind == 1:
            made.append("#1." + "".join(rng.choices(link.ALPHABET, k=rng.randint(0, 300))))
        elif kind == 2:
            made.append(whole[: rng.randrange(len(whole))])
        elif kind == 3:
            at = rng.randrange(len(whole))
            made.append(whole[:at] + rng.choice(letters) + whole[at + 1:])
        elif kind == 4:
            made.append(_signed(rng.randbytes(rng.randint(0, 200))))
        else:
            made.append(_hostile(rng, demo_slots))
    return made


def test_each_gives_a_page_or_a_plain_message(run_page, demo_slots):
    made = fragments(demo_slots)
    assert len(made) == COUNT
    found = run_page("page.mjs", {"slots": link.table(), "fragments": made})["decoded"]
    taken = 0
    for fragment, result in zip(made, found, strict=True):
        if isinstance(result, str):
            assert result in ("broken", "newer")
            continue
        taken += bool(result)
        for name, text in result.items():
            slot = link._slot(name)
            assert link.fits(slot, text), (fragment, name, text)
            if not slot.free:
                assert not set(text) & set("<>&\"'`(){}")
    # Some hostile free texts fit their slot: they are text, and shown as such.
    assert 0 < taken < COUNT / 2


def test_the_page_places_them_as_text_alone(run_page, demo_slots):
    """The page's own script, run on each: only text, hiding, and places of a drawing."""
    made = fragments(demo_slots)[:4000]
    made += [_signed("\n".join(demo_slots.get(n, "") if n != "home" else "<b>hi</b>"
                               for n in link.NAMES).rstrip("\n").encode())]
    results = run_page("page.mjs", {"slots": link.table(), "told": told(), "spots": spots(),
                                    "pages": made})["pages"]
    for fragment, result in zip(made, results, strict=True):
        assert len(result["faults"]) <= 1
        if result["faults"]:
            assert not result["texts"], fragment
        assert all(ATTRIBUTE.fullmatch(value) for value in result["attributes"]), fragment
    assert ["home", "<b>hi</b>"] in results[-1]["texts"]
