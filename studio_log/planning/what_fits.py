"""Plans what can be planned: a lot that has no place is left out, and why is said.

For a problem file that would be an answer to another question; a studio's own log has lots in the
middle of their work, and one that cannot be helped shall not keep the others without a plan.
"""

from studio_log.language.words import tr
from studio_log.planning.changes import without_lots
from studio_log.planning.effort import Effort
from studio_log.planning.engine import Impossible, Studio
from studio_log.planning.problem import Problem
from studio_log.planning.why_sizes import misfits


def what_fits(problem: Problem, effort: Effort) -> tuple[Problem, tuple[Impossible, ...]]:
    """Give the problem without the lots that have no place even alone, and those with their words.

    The problem itself where it has none, or where that cannot be told in time.
    """
    left = [Impossible(one.lot, one.sentence) for one in misfits(problem)]
    problem = without_lots(problem, (one.lot for one in left))
    while problem.lots:
        studio = Studio(problem, effort.stop)
        if studio.first_plan() or not studio.impossible:
            break
        problem = without_lots(problem, (one.lot for one in studio.impossible))
        left += studio.impossible
    return problem, tuple(left)


def beside(problem: Problem, effort: Effort) -> tuple[Problem, tuple[Impossible, ...]]:
    """Give the problem without the lots that find no place beside the others, and those.

    For one that has no plan though each of its lots has a place alone. Lots that run come first,
    then those wanted soonest; who is served by the milk of one that is left out goes with it. The
    problem itself where that cannot be told in time.
    """
    studio = Studio(problem, effort.stop)
    missed = [] if studio.impossible else studio.fill_most()
    if not missed or len(missed) == len(studio.chains) or effort.stop():
        return problem, ()
    served = [one for one in problem.lots if set(studio.milks.makers(one.name)) & set(missed)]
    names = list(dict.fromkeys([*missed, *(one.name for one in served)]))
    return without_lots(problem, names), tuple(
        Impossible(name, _beside_words(name)) for name in names
    )


def _beside_words(name: str) -> str:
    return tr(
        "{name} finds no place beside the others in these days, hours and vessels, though it would "
        "alone.",
        name=name,
    )
