/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "core/lumber.h"

G_BEGIN_DECLS

/* Everything that the person said about one slab.
 *
 * A plan is reference-counted and never changes once it is shared: an edit copies it, changes the
 * copy and passes that on. It owns or references all that it points to. Texts are GRefString, so
 * that copies share them. Units: mm, N, MPa, s, degrees C, per cent, kg, minor units of the
 * currency.
 *
 * A plan that is shared is whole: every placement and pin names a lamination that it holds, no
 * placement one twice, packs lie within the order, every placed clamp is of a kind that the shop
 * has, and every cut is out of a board and for a piece that are there.
 *
 * `unknown` fields hold, as JSON text, the keys of the file that this version does not know;
 * nothing in the core reads them. They are NULL when there were none. */

typedef enum
{
  BS_LAYUP_ON_EDGE, /* wide faces glued */
  BS_LAYUP_ON_FLAT, /* narrow edges glued */
} BsLayup;

typedef enum
{
  BS_FLATTEN_BY_HAND,
  BS_FLATTEN_BY_SLED, /* a router on a sled */
  BS_FLATTEN_BY_PLANER,
} BsFlattenMethod;

/* Which face is cut first, and how the slab lies then: docs/flattening-model.md, "Orders of work".
 */
typedef enum
{
  BS_FLATTEN_SHIMMED,         /* shimmed to the best tilt before the first face is cut */
  BS_FLATTEN_SHOW_FACE_FIRST, /* resting on its underside, show face cut first, then turned over */
  BS_FLATTEN_UNDERSIDE_FIRST, /* resting on its show face, underside cut first */
} BsFlattenWork;

#define BS_N_FLATTEN_WORKS 3

/* How the laminations are lined up along z when they are pressed. */
typedef enum
{
  BS_ALIGNMENT_UNDERSIDES_DOWN, /* each rests with its lowest spot on a flat bench or on cauls */
  BS_ALIGNMENT_SHOW_FACES_DOWN, /* glued upside down on a flat bench */
  BS_ALIGNMENT_ENDS_FLUSH,      /* undersides flush at both ends */
  BS_ALIGNMENT_MIDDLES_LEVEL,   /* crooks share their error, above and below one level */
} BsAlignment;

#define BS_N_ALIGNMENTS 4

typedef enum
{
  BS_UNIT_SYSTEM_METRIC,
  BS_UNIT_SYSTEM_INCH,
} BsUnitSystem;

/* What is asked of the slab's wood besides its hardness. NAN: not asked. */
typedef struct
{
  double max_kg;               /* of the slab */
  double max_movement;         /* of its width over the year, mm */
  double max_cost_minor;       /* of its lumber */
  double rough_thickness;      /* that the lumber must have, mm */
  gboolean may_bond_difficult; /* woods that glue holds with difficulty are taken too */
} BsWoodLimits;

/* Where the slab is fastened so that it cannot move; elsewhere slots let it. */
typedef enum
{
  BS_FIXED_MIDDLE,
  BS_FIXED_FRONT,
  BS_FIXED_BACK,
} BsFixedLine;

typedef struct
{
  BsFixedLine line;
  double screw; /* diameter, mm */
  double play;  /* left at each end of a slot, mm */
} BsFixing;

typedef struct
{
  double temperature_c;
  double humidity_pct;
} BsClimate;

/* How far what was measured, and how the laminations come to lie, may be off: standard deviations,
 * mm. */
typedef struct
{
  double height; /* of the measured height at each end of a lamination */
  double warp;   /* of the measured crook, cup (on flat) and twist */
  double offset; /* of a lamination up or down in the press, against where the alignment wants it */
  double rock;   /* of its right end against its left one */
} BsUncertainty;

typedef struct
{
  double length, width, thickness; /* wanted, when finished */
  BsLayup layup;
  gboolean alternate_hearts; /* the layup asks for heart sides that look opposite ways */
  gboolean shows_front;      /* besides the show face: the first lamination's outer face, */
  gboolean shows_back;       /* the last one's, */
  gboolean shows_underside;
  gboolean shows_ends;
  BsAlignment alignment;
  BsFlattenMethod flatten_method;
  BsFlattenWork flatten_work;
  double allowance; /* taken off each face beyond flat, for tool marks */
  BsUncertainty uncertainty;
  BsClimate dry_season, damp_season; /* where it will live */
  double hardness_low_n;             /* side hardness wanted, from and to; NAN: open at that end, */
  double hardness_high_n;            /* both: not said, see core/wood-compare.h */
  BsWoodLimits wood_limits;
  BsFixing fixing;
  GRefString *unknown;
} BsSlab;

typedef struct
{
  GRefString *id;
  GRefString *name;
  int count;
  double max_force_n;
  double reach;                   /* greatest distance between the heads */
  double head_width, head_height; /* along x and along z */
  double screw_mean_diameter;     /* of the thread; NAN when not known */
  double screw_lead;              /* advance a turn; NAN when not known */
  GRefString *unknown;
} BsClampKind;

typedef struct
{
  GRefString *id;
  GRefString *name;
  int count;
  double length, thickness, height; /* along x, y, z, as a lamination */
  double moe_mpa;                   /* along its grain */
  GRefString *unknown;
} BsCaulKind;

/* How long one pair of hands takes. */
typedef struct
{
  double spread_s_per_m2; /* glue on one glue line */
  double joint_s;         /* fixed part a joint: picking up, wiping */
  double place_s;         /* to set one lamination down on the stack */
  double align_s;         /* to line it up */
  double tighten_s;       /* a clamp */
} BsHandTimes;

typedef struct
{
  BsClimate climate;
  int people;
  double planer_width;  /* 0: none */
  double jointer_width; /* 0: none */
  double max_lift_kg;   /* what is lifted without help; NAN: not said */
  BsHandTimes times;
  BsSaw saw;
  GPtrArray *clamps; /* BsClampKind */
  GPtrArray *cauls;  /* BsCaulKind */
  GRefString *unknown;
} BsShop;

/* How much to buy. */
typedef struct
{
  double confidence_pct;  /* that all pieces come out of the boards bought */
  double spare_pct;       /* laminations sawn beyond those needed, so that the best can be chosen */
  double lamination_size; /* across the slab, at most, of laminations that are not there yet */
} BsBuying;

/* The figures of an adhesive's data sheet, or of its class where none is at hand. */
typedef struct
{
  GRefString *id; /* row of the adhesive table that it was taken from */
  GRefString *name;
  double open_s;  /* longest open assembly time at 20 C */
  double total_s; /* longest total assembly time at 20 C */
  double clamp_s; /* in the clamps at 20 C */
  double min_temperature_c;
  double spread_g_per_m2;      /* on one glue line */
  double min_pressure_mpa;     /* recommended pressure, from */
  double max_pressure_mpa;     /* to */
  gboolean is_waterborne;      /* open time changes with the humidity of the air */
  gboolean is_moisture_curing; /* moist air and wood shorten its times */
  GRefString *source;          /* of the figures, shown with every number that uses them */
  gboolean is_own_figures;     /* the person typed them from a data sheet */
  double price_minor_per_kg;   /* NAN: not known */
  GRefString *unknown;
} BsAdhesive;

/* How readily a wood is glued. Source: Wood Handbook (FPL-GTR-190, 2010), table 10-1. */
typedef enum
{
  BS_BOND_UNKNOWN = -1,
  BS_BOND_EASY,         /* with adhesives of a wide range, in a wide range of conditions */
  BS_BOND_WELL,         /* with a fair range, in a moderate range of conditions */
  BS_BOND_SATISFACTORY, /* with good adhesives, under well controlled conditions */
  BS_BOND_DIFFICULT,    /* with chosen adhesives under close control, or after special treatment */
} BsBond;

/* The figures of a wood, at 12 % moisture. NAN where a table lacks one. */
typedef struct
{
  GRefString *id;
  GRefString *name;
  GRefString *botanical;
  gboolean is_hardwood;
  double sg_12; /* specific gravity: oven-dry mass, volume at 12 % */
  double side_hardness_n;
  double moe_mpa;           /* in bending */
  double comp_perp_mpa;     /* strength across the grain at the proportional limit */
  double shrink_radial_pct; /* green to oven-dry */
  double shrink_tangential_pct;
  double coef_radial; /* change of size for each % of moisture, 6 to 14 % */
  double coef_tangential;
  BsBond bond;
  double price_minor_per_m3; /* rough, as the person buys it; NAN: not known */
  GRefString *source;
  gboolean is_from_memory; /* some figure was not read in its source */
  GRefString *unknown;
} BsWood;

/* Where a lamination lies in the slab. The first placement is the front one (smallest y). */
typedef struct
{
  GRefString *lamination; /* id */
  BsOrientation orientation;
  double start; /* x of its left end in the rough slab, >= 0 */
  GRefString *unknown;
} BsPlacement;

/* Neighbours that are glued as one press before the final press, or before a larger pack that has
 * them all: core/packs.h. */
typedef struct
{
  int first; /* place of the first lamination in the order */
  int count; /* at least 2 */
  GRefString *unknown;
} BsPack;

/* A clamp where the person puts it. */
typedef struct
{
  GRefString *kind;  /* id of one of the shop's kinds */
  double x;          /* of the middle of its heads, from the slab's left end */
  double force_n;    /* that it is tightened to */
  gboolean is_above; /* the show face, else below the underside */
  GRefString *unknown;
} BsPlacedClamp;

/* How much something about the order matters to the person. */
typedef enum
{
  BS_ORDER_WISH_OFF,
  BS_ORDER_WISH_LITTLE,
  BS_ORDER_WISH_NORMAL,
  BS_ORDER_WISH_MUCH,
} BsOrderWish;

#define BS_N_ORDER_WISHES 4

/* What counts when an order is judged or sought: core/order-wishes.h. */
typedef struct
{
  BsOrderWish looks;        /* a show face without defects and without steps of colour */
  BsOrderWish easy_planing; /* all run-out one way, no steps to plane down */
  BsOrderWish stays_flat;   /* heart sides, bows and moisture that keep each other in check */
  gboolean uses_rack; /* laminations of the rack may be proposed in place of those in the slab */
} BsOrderWishes;

/* What a proposed order must leave as the person fixed it. */
typedef enum
{
  BS_PIN_PLACE,        /* stands at a place */
  BS_PIN_NEIGHBOURS,   /* stands beside another one, on either side of it */
  BS_PIN_TOP_UP,       /* its top, as marked, is up if it is used; */
  BS_PIN_UNDERSIDE_UP, /* or its underside */
} BsPinKind;

typedef struct
{
  BsPinKind kind;
  GRefString *lamination; /* id */
  int place;              /* in the order, from 0; -1 but for BS_PIN_PLACE */
  GRefString *other;      /* id of the neighbour; NULL but for BS_PIN_NEIGHBOURS */
  GRefString *unknown;
} BsPin;

typedef struct
{
  GRefString *name;
  GRefString *note;
  BsUnitSystem units;   /* how sizes are shown */
  GRefString *currency; /* ISO 4217 */
  BsSlab slab;
  BsShop shop;
  BsBuying buying;
  BsAdhesive adhesive;
  GPtrArray *woods;  /* BsWood: those that the plan uses */
  GPtrArray *boards; /* BsBoard */
  GPtrArray *offers; /* BsOffer */
  GPtrArray *parts;  /* BsPart: what is wanted besides the laminations */
  BsOrderWishes wishes;
  GArray *pins;           /* BsPin */
  GArray *cuts;           /* BsCut: no lamination twice, no part more often than it is wanted */
  GPtrArray *laminations; /* BsLamination: all, in the slab or in the rack */
  GArray *order;          /* BsPlacement: the slab; what is not in it stands in the rack */
  GArray *packs;          /* BsPack, in the order of core/packs.h */
  GArray *placed_clamps;  /* BsPlacedClamp, from left to right; none: those of the hand rule */
  GRefString *unknown;
} BsPlan;

/* The parts that plans share, all numbers 0 but what is documented as NAN when unknown; fill them
 * before they are put in a plan. The text is the id. A copy is one's own, to be changed first. */
BsClampKind *bs_clamp_kind_new (const char *id);
BsClampKind *bs_clamp_kind_copy (const BsClampKind *self);
BsClampKind *bs_clamp_kind_ref (BsClampKind *self);
void bs_clamp_kind_unref (BsClampKind *self);
BsCaulKind *bs_caul_kind_new (const char *id);
BsCaulKind *bs_caul_kind_copy (const BsCaulKind *self);
BsCaulKind *bs_caul_kind_ref (BsCaulKind *self);
void bs_caul_kind_unref (BsCaulKind *self);
BsWood *bs_wood_new (const char *id);
BsWood *bs_wood_copy (const BsWood *self);
BsWood *bs_wood_ref (BsWood *self);
void bs_wood_unref (BsWood *self);

/* The adhesive is part of its plan. Sets self, which holds an adhesive or zeros, to a copy of
 * another. */
void bs_adhesive_set (BsAdhesive *self, const BsAdhesive *from);
void bs_adhesive_clear (BsAdhesive *self);

/* An empty plan with the defaults of a small shop, every value within core/limits.h. */
BsPlan *bs_plan_new (void);
BsPlan *bs_plan_ref (BsPlan *self);
void bs_plan_unref (BsPlan *self);

/* A copy of one's own, to be changed before it is shared. Laminations, woods, boards, clamps and
 * cauls are shared with the original: replace them, never write to them. */
BsPlan *bs_plan_copy (const BsPlan *self);

/* An id for a new lamination, which none and no part has; the caller's. */
char *bs_plan_make_lamination_id (const BsPlan *self);

/* Puts a lamination that the plan holds at a place of the order, 0 to the number of placements. */
void bs_plan_insert_placement (BsPlan *self, int place, const char *lamination,
                               BsOrientation orientation, double start);

/* Puts a clamp of a kind that the shop has between the others; its place among them. */
guint bs_plan_place_clamp (BsPlan *self, const char *kind, double x, double force_n,
                           gboolean is_above);

/* Puts the placed clamps in order from left to right, after some were moved. */
void bs_plan_sort_clamps (BsPlan *self);

/* Place of a kind of clamp in the shop's list, -1 when it has none of that id. */
int bs_plan_find_clamp_kind (const BsPlan *self, const char *id);

/* Borrowed; NULL when there is none of that id. */
const BsLamination *bs_plan_find_lamination (const BsPlan *self, const char *id);
const BsWood *bs_plan_find_wood (const BsPlan *self, const char *id);

const BsBoard *bs_plan_find_board (const BsPlan *self, const char *id);
const BsPart *bs_plan_find_part (const BsPlan *self, const char *id);

/* Appends a cut to a plan that is not shared yet; takes references of its own. */
void bs_plan_add_cut (BsPlan *self, const BsCut *cut);

/* Place of a lamination in the order, -1 when it stands in the rack. */
int bs_plan_find_place (const BsPlan *self, const char *id);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCaulKind, bs_caul_kind_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsClampKind, bs_clamp_kind_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPlan, bs_plan_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsWood, bs_wood_unref)

G_END_DECLS
