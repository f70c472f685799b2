"""Wrong but plausible: what must be noticed is; what cannot be says what shows it instead."""

import pytest

from tests.faults import plausible
from tests.faults.tally import Campaign


@pytest.mark.parametrize("campaign", plausible.CAMPAIGNS, ids=lambda campaign: campaign.name)
def test_wrong_but_plausible(campaign: Campaign) -> None:
    tally = campaign.tally(campaign.short)
    assert not tally.failed, "\n".join(tally.failures)


def test_a_separate_sign_is_applied_to_every_line() -> None:
    """A minus sign lost after the first line would be a reversed torque that looks right."""
    from logger.decoder.build import build_decoder
    from logger.decoder.description import Description
    from logger.edges.toml_file import parse_toml

    text = 'name = "x"\n[lines]\ntemplate = "{sign}{torque}"\n'
    decoder = build_decoder(parse_toml(text, Description, "x"))
    decoder.feed(b"- 1.5\r\n")  # after a reset the first line may be cut: it is excluded
    decoded = [decoder.feed(b"-12.3\r\n").columns["torque"].tolist() for _ in range(3)]
    assert decoded[-1] == [-12.3]
