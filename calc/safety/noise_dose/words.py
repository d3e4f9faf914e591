"""What "Noise of the day" says in words."""

from __future__ import annotations

from calc import tables, units
from calc.safety.noise_dose.cautions import Findings


def verdict_words(found: Findings) -> str:
    """Say how the day stands to the two United States rules; never a promise."""
    told = (
        f"{units.show(found.niosh, 0)} % of NIOSH 1998 and {units.show(found.osha, 0)} % of OSHA "
        f"1910.95 {found.where}"
    )
    if found.over:
        return f"Over the published limit: {told}."
    if found.niosh > 50:
        return f"Within the published limit, more than half used: {told}."
    return f"Within the published limit: {told}."


def plan_words(found: Findings) -> str:
    """Say what to do next."""
    if found.over and found.protector == "none":
        return "Wear protectors, put them in below and look again; or shorten the noise."
    if found.over and found.protector != "both":
        return "Wear plugs and muffs together, or shorten the loudest job."
    if found.over:
        return "Two protectors do not do it: shorten the loudest job or use a quieter tool."
    if found.protector == "none" and found.niosh > 50:
        return "Wear a protector all the same: a louder minute than you think uses up the rest."
    if found.protector == "none":
        return "Keep a protector in the kit, and measure the level once."
    if found.worn < 1:
        return "Put the protector on before the switch and take it off after: minutes off count."
    return "Keep to these minutes and keep the seal."


def eu_words(found: Findings) -> str:
    """Say how the day stands to the values of the European directive."""
    if found.bare_mean is None or found.ear_mean is None:
        return "No noise was given."
    lower, upper, limit = (
        float(tables.row("noise_limits", key)["criterion"])
        for key in ("eu_lower", "eu_upper", "eu_limit")
    )
    if found.bare_mean >= upper:
        told = f"Upper action value ({upper:.0f}) reached: protectors must be worn"
    elif found.bare_mean >= lower:
        told = f"Lower action value ({lower:.0f}) reached: protectors must be offered"
    else:
        told = f"Under the lower action value ({lower:.0f})"
    ear = "over" if found.ear_mean > limit else "within"
    return f"{told}; at the ear {ear} the limit ({limit:.0f})."
