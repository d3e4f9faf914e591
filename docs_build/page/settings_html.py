"""The settings panel as HTML; the page only marks what is chosen."""

from __future__ import annotations

from html import escape

CHOICES = (
    ("text", "Text size", (("", "Normal"), ("larger", "Larger"), ("largest", "Largest"))),
    ("hand", "Hand that holds the phone", (("", "Right"), ("left", "Left"))),
    ("contrast", "Contrast", (("", "As the phone says"), ("more", "Strongest"))),
    (
        "scheme",
        "Colours",
        (("", "As the phone says"), ("light", "Light, for sun"), ("dark", "Dark")),
    ),
    ("units", "Units", (("si", "Metric"), ("us", "US units"))),
)
"""Name, label and options (value, label); an empty value leaves it as the page comes."""


def settings_html() -> str:
    """Return the panel; without scripts only a sentence shows."""
    return (
        '<div class="settings" data-settings><p class="settings-static">Settings need scripts.</p>'
        f'<div class="settings-live" hidden>{"".join(_group(*each) for each in CHOICES)}'
        '<p class="settings-said" role="status"></p></div></div>'
    )


def _group(name: str, label: str, options: tuple[tuple[str, str], ...]) -> str:
    items = "".join(
        f'<label class="calc-radio"><input type="radio" name="{name}" value="{value}">'
        f"<span>{escape(words)}</span></label>"
        for value, words in options
    )
    return f"<fieldset><legend>{escape(label)}</legend>{items}</fieldset>"
