from studio_log.domain.journal import Act
from studio_log.services.commands import Undo
def test_smoke(shop):
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    shop.do(Undo(code))
    assert not shop.lot(code).started
