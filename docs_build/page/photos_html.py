"""The part for pictures as HTML: buttons, and one card that the page copies for each picture."""

from __future__ import annotations

from html import escape

from calc.clients.job import photos
from calc.clients.job.declare import Field
from calc.clients.job.fields import section

PICTURE = 'type="file" accept="image/*"'


def photos_html(kind: str = "unknown", sheet: str = "") -> str:
    """Return the part for the pictures of the open job; without scripts only a sentence shows.

    Parameters
    ----------
    kind : what a new picture shows, unless another kind is chosen
    sheet : address of the job sheet, for a page on which no job may be open
    """
    none = f'No job is open. <a href="{escape(sheet)}">Open one</a> to keep pictures.'
    return (
        '<div class="photo-notes" data-photo-notes role="group" '
        f'aria-label="Pictures of the job" data-kind="{kind}" '
        f'data-side="{photos.LONG_SIDE}" data-bytes="{photos.BYTES}" '
        f'data-most="{photos.MOST}" data-usual="{" ".join(photos.USUAL)}">'
        '<p class="photo-static">Pictures need scripts.</p>'
        f'<div class="photo-live" hidden><p class="photo-none" hidden>{none}</p>'
        '<div class="photo-open" hidden>'
        '<p class="photo-rule"><b>Ask first.</b> Leave out faces, house numbers and car plates.</p>'
        '<div class="photo-bar">'
        '<button type="button" class="photo-first" data-photo="pick">Take a picture</button>'
        f'<input {PICTURE} capture="environment" aria-label="Camera" hidden>'
        '<button type="button" data-photo="pick">Choose pictures</button>'
        f'<input {PICTURE} multiple aria-label="Pictures" hidden></div>'
        '<p class="photo-said" role="status"></p>'
        '<button type="button" data-photo="undo" hidden>Bring the picture back</button>'
        f'<ol class="photo-list"></ol><p class="photo-sum"></p></div></div>{_card()}{_view()}</div>'
    )


def save_html() -> str:
    """Return the tick that adds the pictures to a saved job; hidden where a job has none."""
    return (
        '<label class="photo-tick" data-photo-pack hidden><input type="checkbox" checked>'
        "<span>With its pictures, as one ZIP file</span></label>"
    )


def kinds() -> tuple[str, ...]:
    """Return what a picture may show."""
    return tuple(value for value, _ in _declared("kind").options)


def _declared(name: str) -> Field:
    photos = section("photos")
    found = photos.field(name) if photos else None
    if found is None:
        raise ValueError(f"no field of a picture: {name}")
    return found


def _card() -> str:
    kind, caption, tick = (_declared(each) for each in ("kind", "caption", "use_in_report"))
    options = "".join(
        f'<option value="{escape(value)}">{escape(label)}</option>' for value, label in kind.options
    )
    return (
        '<template><li class="photo-card">'
        '<button type="button" class="photo-thumb" data-photo="view"><img alt=""></button>'
        '<p class="photo-gone" hidden>The picture itself is not on this device.</p>'
        '<p class="photo-new" hidden>Kept. Its words come as soon as the computing part runs.</p>'
        '<div class="photo-facts">'
        f'<label>{escape(kind.label)}<select data-field="kind">{options}</select></label>'
        f"<label>{escape(caption.label)}"
        '<textarea rows="2" autocomplete="off" data-field="caption"></textarea></label>'
        '<p class="calc-error" hidden></p>'
        f'<label class="photo-tick"><input type="checkbox" data-field="use_in_report">'
        f"<span>{escape(tick.label)}</span></label>"
        '<div class="photo-bar">'
        '<button type="button" data-photo="move" data-by="-1">Earlier</button>'
        '<button type="button" data-photo="move" data-by="1">Later</button>'
        '<button type="button" data-photo="drop">Delete</button></div>'
        "</div></li></template>"
    )


def _view() -> str:
    return (
        '<dialog class="photo-view" aria-label="The picture, larger"><img alt="">'
        '<p></p><button type="button" data-photo="shut">Close</button></dialog>'
    )
