"""What pip prints is turned into a sentence; the pip lines are from runs of pip 23 to 26."""

import _trouble
import pytest
from _trouble import told_plainly


@pytest.mark.parametrize(
    ("printed", "words"),
    [
        (
            (
                "WARNING: Retrying (Retry(total=4)) after connection broken by "
                "'NewConnectionError('<pip._vendor.urllib3> Temporary failure in "
                "name resolution')': /simple/segno/\n"
                "ERROR: Could not find a version that satisfies the requirement segno==1.6.6\n"
                "ERROR: No matching distribution found for segno==1.6.6"
            ),
            _trouble.OFFLINE,
        ),
        (
            (
                "ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE. If"
                " you have updated the package versions, please update the hashes."
            ),
            _trouble.WRONG_HASH,
        ),
        (
            (
                "ERROR: Could not install packages due to an OSError: [Errno 28] No space left on "
                "device"
            ),
            _trouble.DISK_FULL,
        ),
        ("ERROR: No matching distribution found for pyside6-essentials==6.11.3", _trouble.NO_BUILD),
        ("SSLError(SSLCertVerificationError(1, '[SSL: CERTIFICATE_VE", _trouble.CERTIFICATE),
    ],
)
def test_the_reason_is_told_and_not_the_noise(printed: str, words: str) -> None:
    assert told_plainly("Installing the packages", printed) == (
        f"Installing the packages failed. {words}"
    )


def test_an_unknown_reason_gives_the_last_line() -> None:
    assert told_plainly("Trying", "first\n  the last \n\n") == "Trying failed: the last"
    assert told_plainly("Trying", "") == "Trying failed: it ended without a word"
