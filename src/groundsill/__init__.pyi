from groundsill.doors.files import open_house as open_house
from groundsill.doors.files import read_house as read_house
from groundsill.doors.files import write_house as write_house
from groundsill.doors.formulas import formula as formula
from groundsill.doors.study_json import study_text as study_text
from groundsill.study import Study as Study
from groundsill.study import run as run
from groundsill.study import working as show_working
from groundsill.work.checks import check_house as check_house
from groundsill.work.document import House as House
from groundsill.working.errors import BadSurvey as BadSurvey
from groundsill.working.errors import GroundsillError as GroundsillError

__all__ = [
    "BadSurvey",
    "GroundsillError",
    "House",
    "Study",
    "__version__",
    "check_house",
    "formula",
    "open_house",
    "read_house",
    "run",
    "show_working",
    "study_text",
    "write_house",
]

__version__: str
