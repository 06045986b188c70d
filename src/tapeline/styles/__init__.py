"""The styles there are, each a page of its own in this folder."""

from tapeline.styles.block import STYLE as BLOCK
from tapeline.styles.cardigan import STYLE as CARDIGAN
from tapeline.styles.cut_in_one import STYLE as CUT_IN_ONE
from tapeline.styles.dropped import STYLE as DROPPED
from tapeline.styles.hooded import STYLE as HOODED
from tapeline.styles.polo import STYLE as POLO
from tapeline.styles.pyjama import STYLE as PYJAMA
from tapeline.styles.raglan import STYLE as RAGLAN
from tapeline.styles.shirt import STYLE as SHIRT
from tapeline.styles.style import Style
from tapeline.styles.sweatshirt import STYLE as SWEATSHIRT
from tapeline.styles.tee import STYLE as TEE
from tapeline.styles.vest import STYLE as VEST
from tapeline.styles.wrap import STYLE as WRAP
from tapeline.styles.zipped import STYLE as ZIPPED

__all__ = ["STYLES", "Style"]

STYLES: dict[str, Style] = {
    style.name: style
    for style in (
        TEE,
        VEST,
        SWEATSHIRT,
        HOODED,
        ZIPPED,
        CARDIGAN,
        POLO,
        SHIRT,
        PYJAMA,
        DROPPED,
        RAGLAN,
        CUT_IN_ONE,
        WRAP,
        BLOCK,
    )
}
