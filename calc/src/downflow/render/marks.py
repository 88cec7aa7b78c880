"""The few signs of the handbook: verdict marks, the alert triangle, the line of origin."""

from __future__ import annotations

from downflow.markup import Markup, tag

_PATHS: dict[str, tuple[Markup, ...]] = {
    "fine": (tag("circle", cx="12", cy="12", r="9.2", fill="none", stroke="currentColor",
                 stroke_width="2.6"),),
    "look": (tag("path", d="M12 1.6 22.4 12 12 22.4 1.6 12Z", fill="none", stroke="currentColor",
                 stroke_width="2.4"),
             tag("path", d="M2.5 12h19L12 21.5Z", fill="currentColor")),
    "hold": (tag("path", d="M7.3 .8h9.4L23.2 7.3v9.4l-6.5 6.5H7.3L.8 16.7V7.3Z M5 9.8v4.4h14V9.8Z",
                 fill="currentColor", fill_rule="evenodd"),),
    "sign": (tag("circle", cx="12", cy="12", r="9.2", fill="none", stroke="currentColor",
                 stroke_width="2.6"),
             tag("path", d="M6.5 15.5h11M7.5 12.5c2-6 4-6 3.4-1.5 1.4-3 2.6-3 2.8 0 .8-1 1.6-1 "
                 "2.6-.4", fill="none", stroke="currentColor", stroke_width="1.6")),
    "pending": (tag("circle", cx="12", cy="12", r="9.2", fill="none", stroke="currentColor",
                    stroke_width="2.6", stroke_dasharray="4 3"),),
}

FROM_CLASS = {"measured": "df-from-measured", "data sheet": "df-from-sheet",
              "estimated": "df-from-estimated", "assumed": "df-from-assumed"}


def verdict_mark(level: str) -> Markup:
    """The mark of a verdict; the word always stands beside it."""
    return tag("svg", _PATHS[level], class_="df-v", data_l=level, viewBox="0 0 24 24",
               aria_hidden="true")


_TRIANGLE = tag(
    "svg",
    tag("path", d="M12 2.5 23 21.5H1Z", fill="none", stroke="currentColor", stroke_width="2.4",
        stroke_linejoin="round"),
    tag("path", d="M12 9v6", stroke="currentColor", stroke_width="2.6"),
    tag("circle", cx="12", cy="18", r="1.5", fill="currentColor"),
    viewBox="0 0 24 24", aria_hidden="true")


def caution(level: str, text: str, who: str = "") -> Markup:
    """A caution as it stands before what it guards: `danger`, `warning`, `caution`, `notice`."""
    return tag("aside", None if level == "notice" else _TRIANGLE,
               tag("p", level.upper(), class_="df-caution__word"),
               tag("p", text), tag("p", f"Who may: {who}.", class_="df-small") if who else None,
               class_=f"df-caution df-caution--{level}", role="note")


def from_class(origin: str) -> str:
    """The class that draws the line under a value."""
    return FROM_CLASS.get(origin, "")


FROM_KEY = tag(
    "ul", [tag("li", tag("i", class_=css), word) for word, css in FROM_CLASS.items()],
    class_="df-key", aria_label="The line under a number says where it comes from")
