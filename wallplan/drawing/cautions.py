"""Cautions as they stand on the sheets, a line or two each, with the source's words' place. Local codes come first."""

from __future__ import annotations

USUAL = (
    "Cut wet or with extraction, with mask, goggles and guards: the dust kills. Lift heavy units in pairs. "
    "Cement burns: gloves. A fresh wall falls in wind: brace it and keep clear by its height and 4 ft (1.2 m). "
    "Layout only, no structural design; retaining walls by a licensed designer. Local codes come first. "
    "Lay the first course dry to check it."
)
"""The usual cautions, as short as they can be said (OSHA 29 CFR 1926.1153 for dust, 1926.706 for the limited access
zone of the wall's height and 4 ft; the rest common practice, no source)."""

DUST = ("Cut wet or with extraction, with mask, goggles and guards: the dust kills (OSHA 29 CFR 1926.1153). "
        "Lift heavy units in pairs; cement burns: gloves (common practice, no source).")
"""On the saw list."""

SETTING_OUT = ("Layout only, no structural design: walls that bear, retain or stand high, lintels and footings by a "
               "licensed designer; local codes come first. Lay the first course dry with the real units, then mark "
               "(common practice, no source).")
"""On the course sheet and the marks."""

POLE = ("Beds within 1/8 in (3 mm) of the bed joint, the first from 1/4 to 3/4 in (6 to 19 mm) (TMS 602, local codes "
        "come first). Check the footing's high spot before the pole is cut (common practice, no source).")
"""On the story pole."""

FRESH = ("A fresh wall falls in wind: keep clear of it by its height and 4 ft (1.2 m), on the side without scaffold; "
         "brace it over 8 ft (2.4 m) (OSHA 29 CFR 1926.706). Local codes come first.")
"""On the leads."""

ORDER = ("Counted from the layout, no design: steel, grout, lintels, mortar type and bracing are for whoever answers for "
         "the structure, under local codes. Cement burns: gloves and goggles. Lift heavy units in pairs (common practice, "
         "no source). Cut wet or with extraction, with mask: the dust kills (OSHA 29 CFR 1926.1153).")
"""On the order."""
