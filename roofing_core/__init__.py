"""Roofing calculations: from tape measure to order list, as pure functions.

Inside, every number is a plain float in inches, square inches, cubic inches, pounds or radians, and
a pitch is rise over run. The job reads in this order: read what people write, measure the roof, lay
its layers one by one, or `plan` all of it at once. What cannot be built is `Refused`, with every
fault named; what should not be built is a finding on the plan.
"""

from typing import TYPE_CHECKING

from roofing_core.version import VERSION

if TYPE_CHECKING:
    from roofing_core.auditing.audit import audit
    from roofing_core.auditing.finished import FinishedPlan, finished
    from roofing_core.auditing.questions import AuditLimits
    from roofing_core.auditing.verdicts import Audit
    from roofing_core.buying.lines import PricedLine
    from roofing_core.buying.offered import (
        LengthOnHand,
        LengthPack,
        LengthsOffered,
        PiecePack,
        PiecesOffered,
        VolumePack,
        VolumesOffered,
        WeightPack,
        WeightsOffered,
    )
    from roofing_core.buying.packs import PackOffer, PacksBought, cheapest_packs, fewest_packs
    from roofing_core.buying.price_list import PriceList
    from roofing_core.buying.priced import PricedOrder, job_as_bought, priced_order
    from roofing_core.job.choices import (
        Capping,
        Choices,
        Coursing,
        Cutting,
        Decking,
        Flashing,
        Job,
        Metalwork,
        Nailing,
        Sealing,
        Underlaying,
        Valleying,
    )
    from roofing_core.job.on_site import Loading, Venting, Wind, Working
    from roofing_core.job.plan import Plan, plan
    from roofing_core.job.trims import best_trims
    from roofing_core.layers.caps import cap_stock, caps
    from roofing_core.layers.coursing.best_sequences import best_sequence
    from roofing_core.layers.coursing.courses import courses, courses_to_cover
    from roofing_core.layers.coursing.nailing import nail_positions, nails_per_strip
    from roofing_core.layers.coursing.needs import NeededPiece, needed_pieces
    from roofing_core.layers.coursing.offsets import offsets
    from roofing_core.layers.coursing.reuse import reuse
    from roofing_core.layers.coursing.sequences import generated_sequence, sequence_with_wide_ends
    from roofing_core.layers.decking.deck import deck, deck_on
    from roofing_core.layers.decking.deck_way import DeckWay
    from roofing_core.layers.fasteners import fasteners, least_nail_length, nails_per_pound
    from roofing_core.layers.flashings.bent_pieces import apron, head_flashing
    from roofing_core.layers.flashings.crickets import cricket
    from roofing_core.layers.flashings.pipes import pipe_flashing
    from roofing_core.layers.flashings.step_flashing import step_flashing, step_flashing_size
    from roofing_core.layers.metal import metal_run, valley_reach, valley_run
    from roofing_core.layers.metal.shared import RunAsked, SharedMetal, StockOffer, shared_metal
    from roofing_core.layers.sealant import sealant
    from roofing_core.layers.underlaying.ice_barrier import ice_barrier, ice_barrier_on
    from roofing_core.layers.underlaying.ice_reach import (
        ice_barrier_reach,
        ice_barrier_reaches,
        ice_reach,
    )
    from roofing_core.layers.underlaying.sheeting import SheetWay
    from roofing_core.layers.underlaying.underlaid import UnderlaymentWay
    from roofing_core.layers.underlaying.underlayment import underlayment, underlayment_on
    from roofing_core.layers.underlaying.valley_lining import valley_lining
    from roofing_core.layers.weight import lifting_limit, weight, weights
    from roofing_core.materials import (
        Cap,
        CapNail,
        Metal,
        Nail,
        Panel,
        PipeFlashing,
        Roll,
        Sealant,
        Sheet,
        Shingle,
        Starter,
        StepFlashing,
        Tape,
        catalogue,
        material,
    )
    from roofing_core.measures.counting import whole_packs, whole_pieces
    from roofing_core.measures.faults import Fault, Refused, TooManyPieces
    from roofing_core.measures.quantities import from_quantity, to_quantity
    from roofing_core.measures.reading import read, read_length, read_pitch
    from roofing_core.measures.sentences import write, write_length
    from roofing_core.measures.units import convert
    from roofing_core.roof.facets import Facet
    from roofing_core.roof.footprints import Footprint, Side
    from roofing_core.roof.forms import Gable, Gambrel, Hip, Pyramid, Saltbox
    from roofing_core.roof.given_planes import GivenPlane, GivenPlanes, given_surfaces
    from roofing_core.roof.hips import hip_line, jack_difference
    from roofing_core.roof.in_space import planes_in_space
    from roofing_core.roof.openings import (
        Chimney,
        Skylight,
        VentPipe,
        holes_in,
        opening_faults,
        rectangle,
    )
    from roofing_core.roof.pitch import (
        hip_valley_factor,
        pitch_angle,
        pitch_factors,
        pitch_of,
        slope_factor,
    )
    from roofing_core.roof.planes import SingleSlope, measure, planes
    from roofing_core.roof.reading_cityjson import planes_from_cityjson
    from roofing_core.roof.reading_drawings import Picked, planes_from_drawing
    from roofing_core.roof.reading_geojson import planes_from_geojson
    from roofing_core.roof.slopes import roof_area, slope
    from roofing_core.roof.whole_roof import surfaces
    from roofing_core.ruling.listing import rules
    from roofing_core.sheets.drawings.all import drawings
    from roofing_core.sheets.drawings.paper import Drawing
    from roofing_core.sheets.drawings.roof_plan import roof_plan
    from roofing_core.sheets.job_sheet.pages import job_sheet_html
    from roofing_core.sheets.job_sheet.typeset import job_sheet_pdf
    from roofing_core.sheets.notebook import plan_html
    from roofing_core.sheets.priced import priced_order_text
    from roofing_core.sheets.sizing import cost_fit_text, fit_text, margins_text
    from roofing_core.sheets.story_pole import StoryPole, story_pole, story_pole_text
    from roofing_core.sheets.surfaces import surfaces_text
    from roofing_core.sheets.tables.all import plan_table
    from roofing_core.sheets.tables.comma_text import plan_csv
    from roofing_core.sheets.tables.table import Table
    from roofing_core.sheets.tables.workbook import plan_workbook
    from roofing_core.sheets.text import plan_text
    from roofing_core.sheets.working import working_text
    from roofing_core.site.live_loads import roof_live_load
    from roofing_core.site.loads import deck_load, stacked_load
    from roofing_core.site.ventilation import ventilation
    from roofing_core.site.wind import wind_class
    from roofing_core.sizing.cost import fit_by_cost
    from roofing_core.sizing.cost_kinds import CostFit
    from roofing_core.sizing.fit import FitJob, fit
    from roofing_core.sizing.fit_kinds import Fit
    from roofing_core.sizing.looking import RangedJob
    from roofing_core.sizing.margin_kinds import Margins
    from roofing_core.sizing.margins import MarginsJob, margins
    from roofing_core.sizing.ranges import Between, Ranges
    from roofing_core.sizing.readings import Reading
    from roofing_core.workings.working import WorkedFigure, workable, working
else:
    from importlib import import_module
    from types import MappingProxyType

    #: Where each public name is defined. A chapter is loaded when a name of it is first asked for:
    #: all of them take 70 ms, and whoever only reads a length need not wait for the whole job.
    _HOMES = MappingProxyType(
        {
            "auditing.audit": "audit",
            "auditing.finished": "FinishedPlan finished",
            "auditing.questions": "AuditLimits",
            "auditing.verdicts": "Audit",
            "buying.lines": "PricedLine",
            "buying.offered": "LengthOnHand LengthPack LengthsOffered PiecePack PiecesOffered "
            "VolumePack VolumesOffered WeightPack WeightsOffered",
            "buying.packs": "PackOffer PacksBought cheapest_packs fewest_packs",
            "buying.price_list": "PriceList",
            "buying.priced": "PricedOrder job_as_bought priced_order",
            "job.choices": "Capping Choices Coursing Cutting Decking Flashing Job Metalwork "
            "Nailing Sealing Underlaying Valleying",
            "job.on_site": "Loading Venting Wind Working",
            "job.plan": "Plan plan",
            "job.trims": "best_trims",
            "layers.caps": "cap_stock caps",
            "layers.coursing.best_sequences": "best_sequence",
            "layers.coursing.courses": "courses courses_to_cover",
            "layers.coursing.nailing": "nail_positions nails_per_strip",
            "layers.coursing.needs": "NeededPiece needed_pieces",
            "layers.coursing.offsets": "offsets",
            "layers.coursing.reuse": "reuse",
            "layers.coursing.sequences": "generated_sequence sequence_with_wide_ends",
            "layers.decking.deck": "deck deck_on",
            "layers.decking.deck_way": "DeckWay",
            "layers.fasteners": "fasteners least_nail_length nails_per_pound",
            "layers.flashings.bent_pieces": "apron head_flashing",
            "layers.flashings.crickets": "cricket",
            "layers.flashings.pipes": "pipe_flashing",
            "layers.flashings.step_flashing": "step_flashing step_flashing_size",
            "layers.metal": "metal_run valley_reach valley_run",
            "layers.metal.shared": "RunAsked SharedMetal StockOffer shared_metal",
            "layers.sealant": "sealant",
            "layers.underlaying.ice_barrier": "ice_barrier ice_barrier_on",
            "layers.underlaying.ice_reach": "ice_barrier_reach ice_barrier_reaches ice_reach",
            "layers.underlaying.sheeting": "SheetWay",
            "layers.underlaying.underlaid": "UnderlaymentWay",
            "layers.underlaying.underlayment": "underlayment underlayment_on",
            "layers.underlaying.valley_lining": "valley_lining",
            "layers.weight": "lifting_limit weight weights",
            "materials": "Cap CapNail Metal Nail Panel PipeFlashing Roll Sealant Sheet Shingle "
            "Starter StepFlashing Tape catalogue material",
            "measures.counting": "whole_packs whole_pieces",
            "measures.faults": "Fault Refused TooManyPieces",
            "measures.quantities": "from_quantity to_quantity",
            "measures.reading": "read read_length read_pitch",
            "measures.sentences": "write write_length",
            "measures.units": "convert",
            "roof.facets": "Facet",
            "roof.footprints": "Footprint Side",
            "roof.forms": "Gable Gambrel Hip Pyramid Saltbox",
            "roof.given_planes": "GivenPlane GivenPlanes given_surfaces",
            "roof.hips": "hip_line jack_difference",
            "roof.in_space": "planes_in_space",
            "roof.openings": "Chimney Skylight VentPipe holes_in opening_faults rectangle",
            "roof.pitch": "hip_valley_factor pitch_angle pitch_factors pitch_of slope_factor",
            "roof.planes": "SingleSlope measure planes",
            "roof.reading_cityjson": "planes_from_cityjson",
            "roof.reading_drawings": "Picked planes_from_drawing",
            "roof.reading_geojson": "planes_from_geojson",
            "roof.slopes": "roof_area slope",
            "roof.whole_roof": "surfaces",
            "ruling.listing": "rules",
            "site.live_loads": "roof_live_load",
            "site.loads": "deck_load stacked_load",
            "site.ventilation": "ventilation",
            "site.wind": "wind_class",
            "sheets.drawings.all": "drawings",
            "sheets.drawings.paper": "Drawing",
            "sheets.drawings.roof_plan": "roof_plan",
            "sheets.job_sheet.pages": "job_sheet_html",
            "sheets.job_sheet.typeset": "job_sheet_pdf",
            "sheets.notebook": "plan_html",
            "sheets.priced": "priced_order_text",
            "sheets.sizing": "cost_fit_text fit_text margins_text",
            "sheets.story_pole": "StoryPole story_pole story_pole_text",
            "sheets.tables.all": "plan_table",
            "sheets.tables.comma_text": "plan_csv",
            "sheets.tables.table": "Table",
            "sheets.tables.workbook": "plan_workbook",
            "sheets.surfaces": "surfaces_text",
            "sheets.text": "plan_text",
            "sizing.cost": "fit_by_cost",
            "sizing.cost_kinds": "CostFit",
            "sizing.fit": "FitJob fit",
            "sizing.fit_kinds": "Fit",
            "sizing.looking": "RangedJob",
            "sizing.margin_kinds": "Margins",
            "sizing.margins": "MarginsJob margins",
            "sizing.ranges": "Between Ranges",
            "sizing.readings": "Reading",
            "sheets.working": "working_text",
            "workings.working": "WorkedFigure workable working",
        }
    )
    _HOME = MappingProxyType({name: at for at, names in _HOMES.items() for name in names.split()})

    def __getattr__(name: str) -> object:
        if name not in _HOME:
            raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
        return getattr(import_module(f"{__name__}.{_HOME[name]}"), name)

    def __dir__() -> list[str]:
        return sorted({*globals(), *_HOME})


__version__ = VERSION

__all__ = [
    "Audit",
    "AuditLimits",
    "Between",
    "Cap",
    "CapNail",
    "Capping",
    "Chimney",
    "Choices",
    "CostFit",
    "Coursing",
    "Cutting",
    "DeckWay",
    "Decking",
    "Drawing",
    "Facet",
    "Fault",
    "FinishedPlan",
    "Fit",
    "FitJob",
    "Flashing",
    "Footprint",
    "Gable",
    "Gambrel",
    "GivenPlane",
    "GivenPlanes",
    "Hip",
    "Job",
    "LengthOnHand",
    "LengthPack",
    "LengthsOffered",
    "Loading",
    "Margins",
    "MarginsJob",
    "Metal",
    "Metalwork",
    "Nail",
    "Nailing",
    "NeededPiece",
    "PackOffer",
    "PacksBought",
    "Panel",
    "Picked",
    "PiecePack",
    "PiecesOffered",
    "PipeFlashing",
    "Plan",
    "PriceList",
    "PricedLine",
    "PricedOrder",
    "Pyramid",
    "RangedJob",
    "Ranges",
    "Reading",
    "Refused",
    "Roll",
    "RunAsked",
    "Saltbox",
    "Sealant",
    "Sealing",
    "SharedMetal",
    "Sheet",
    "SheetWay",
    "Shingle",
    "Side",
    "SingleSlope",
    "Skylight",
    "Starter",
    "StepFlashing",
    "StockOffer",
    "StoryPole",
    "Table",
    "Tape",
    "TooManyPieces",
    "Underlaying",
    "UnderlaymentWay",
    "Valleying",
    "VentPipe",
    "Venting",
    "VolumePack",
    "VolumesOffered",
    "WeightPack",
    "WeightsOffered",
    "Wind",
    "WorkedFigure",
    "Working",
    "__version__",
    "apron",
    "audit",
    "best_sequence",
    "best_trims",
    "cap_stock",
    "caps",
    "catalogue",
    "cheapest_packs",
    "convert",
    "cost_fit_text",
    "courses",
    "courses_to_cover",
    "cricket",
    "deck",
    "deck_load",
    "deck_on",
    "drawings",
    "fasteners",
    "fewest_packs",
    "finished",
    "fit",
    "fit_by_cost",
    "fit_text",
    "from_quantity",
    "generated_sequence",
    "given_surfaces",
    "head_flashing",
    "hip_line",
    "hip_valley_factor",
    "holes_in",
    "ice_barrier",
    "ice_barrier_on",
    "ice_barrier_reach",
    "ice_barrier_reaches",
    "ice_reach",
    "jack_difference",
    "job_as_bought",
    "job_sheet_html",
    "job_sheet_pdf",
    "least_nail_length",
    "lifting_limit",
    "margins",
    "margins_text",
    "material",
    "measure",
    "metal_run",
    "nail_positions",
    "nails_per_pound",
    "nails_per_strip",
    "needed_pieces",
    "offsets",
    "opening_faults",
    "pipe_flashing",
    "pitch_angle",
    "pitch_factors",
    "pitch_of",
    "plan",
    "plan_csv",
    "plan_html",
    "plan_table",
    "plan_text",
    "plan_workbook",
    "planes",
    "planes_from_cityjson",
    "planes_from_drawing",
    "planes_from_geojson",
    "planes_in_space",
    "priced_order",
    "priced_order_text",
    "read",
    "read_length",
    "read_pitch",
    "rectangle",
    "reuse",
    "roof_area",
    "roof_live_load",
    "roof_plan",
    "rules",
    "sealant",
    "sequence_with_wide_ends",
    "shared_metal",
    "slope",
    "slope_factor",
    "stacked_load",
    "step_flashing",
    "step_flashing_size",
    "story_pole",
    "story_pole_text",
    "surfaces",
    "surfaces_text",
    "to_quantity",
    "underlayment",
    "underlayment_on",
    "valley_lining",
    "valley_reach",
    "valley_run",
    "ventilation",
    "weight",
    "weights",
    "whole_packs",
    "whole_pieces",
    "wind_class",
    "workable",
    "working",
    "working_text",
    "write",
    "write_length",
]
