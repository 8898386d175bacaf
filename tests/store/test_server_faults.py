"""What a server or the way to it tells, said as a sentence.

SQLSTATEs: postgresql.org/docs/15, appendix A. The words without one
are libpq's, as they were met here.
"""

import psycopg
import pytest
from psycopg import errors

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.store import server_faults
from studio_log.store.faults import ServerGone, WrongPassword


@pytest.mark.parametrize(
    ("error", "kind", "words"),
    [
        (errors.AdminShutdown("x"), ServerGone, "cannot be reached"),  # 57P01
        (errors.ConnectionFailure("x"), ServerGone, "cannot be reached"),  # 08006
        (errors.InvalidPassword("x"), WrongPassword, "let this user in"),  # 28P01
        (errors.InvalidAuthorizationSpecification("x"), WrongPassword, "let this user"),  # 28000
        (errors.InvalidCatalogName("x"), BadStudio, "no database"),  # 3D000
        (errors.DiskFull("x"), BadStudio, "disk of the server"),  # 53100
        (errors.TooManyConnections("x"), BadStudio, "five seconds"),  # 53300
        (errors.LockNotAvailable("x"), BadStudio, "five seconds"),  # 55P03
        (errors.QueryCanceled("x"), BadStudio, "five seconds"),  # 57014
        (errors.InsufficientPrivilege("x"), BadStudio, "has to own"),  # 42501
        (errors.ReadOnlySqlTransaction("x"), BadStudio, "has to own"),  # 25006
        (errors.RaiseException("entries are never changed"), BadStudio, "refused"),  # P0001
        (errors.ForeignKeyViolation("x"), BadStudio, "refused"),  # 23503
    ],
)
def test_by_its_code(error, kind, words):
    refused = server_faults.as_refusal(error, "the server")
    assert type(refused) is kind
    assert words in str(refused)


@pytest.mark.parametrize(
    ("told", "kind", "words"),
    [
        ("connection refused", ServerGone, "cannot be reached"),
        ("consuming input failed: SSL error: unexpected eof while reading", ServerGone, "reached"),
        ("server closed the connection unexpectedly", ServerGone, "cannot be reached"),
        ("connection timeout expired", ServerGone, "cannot be reached"),
        ("failed to resolve host 'server': Name or service not known", ServerGone, "reached"),
        ("SSL error: certificate verify failed", BadStudio, "cannot be trusted"),
        ("server does not support SSL, but SSL was required", BadStudio, "cannot be trusted"),
        ('root certificate file "/none" does not exist', BadStudio, "cannot be trusted"),
        ("fe_sendauth: no password supplied", WrongPassword, "let this user in"),
        ('FATAL: password authentication failed for user "dyer"', WrongPassword, "let this user"),
        ('FATAL: database "x" does not exist', BadStudio, "no database of that name"),
    ],
)
def test_by_its_words(told, kind, words):
    refused = server_faults.as_refusal(psycopg.OperationalError(told), "the server")
    assert type(refused) is kind
    assert words in str(refused)


def test_what_was_typed_is_no_fault_of_the_server():
    refused = server_faults.as_refusal(psycopg.DataError("NUL"), "the server")
    assert type(refused) is Refusal
    assert "no text" in str(refused)


def test_what_is_not_the_servers_passes():
    with pytest.raises(KeyError), server_faults.told("the server"):
        raise KeyError("x")
