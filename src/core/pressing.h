/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How hard every glue line is pressed: docs/pressing-model.md.
 *
 * While the glue is wet the laminations slide on one another; a glue line carries pressure, but no
 * pull and no shear. Each lamination is a beam that bends and shears in the x-y plane and is
 * squeezed through its thickness. Clamps push on both outer faces.
 *
 * Use: describe the stack (BsPressStack), build a solver for it once (bs_pressing_new), then solve
 * for any clamps. The solver keeps the factored equations: as long as the same spots stay closed, a
 * clamp moved or tightened costs one pair of triangular solves. One solver serves one thread.
 *
 * Units: mm, N, MPa. x along the grain, y from front to back. */

typedef enum
{
  BS_PRESS_MODEL_SQUEEZE,    /* within a few per cent of plane elasticity */
  BS_PRESS_MODEL_TIMOSHENKO, /* a third of the work; errs to the safe side, by up to 20 % (greatest
                              * pressure of the outer line) and 0.06 of the mean (least) */
} BsPressModel;

/* One lamination, or one of the shorter pieces that lie end to end in a course, or a caul. */
typedef struct
{
  guint course; /* 0 the front one; a course has one piece or more */
  double start; /* x of its left end */
  double length;
  double thickness;    /* along y */
  double height;       /* along z */
  double e_along_mpa;  /* modulus along the grain, free of shear */
  double e_across_mpa; /* along y */
  double shear_mpa;    /* in the x-y plane */
  double bow;          /* middle towards +y against a line between the ends, unloaded */
  gboolean is_caul;    /* its joints are dry */
} BsPressPiece;

typedef struct
{
  BsPressModel model;
  double step;               /* greatest distance of nodes; 10 is good to 1-2 % for laminations from
                              * 20 mm and clamps from 150 mm apart */
  double span_from, span_to; /* where least and greatest are looked for; the rest is trimmed off */
  guint n_pieces;
  const BsPressPiece *pieces; /* by course, then from left to right; copied */
} BsPressStack;

/* Squeeze, step 10, span everything; no pieces. */
BsPressStack bs_press_stack_default (void);

typedef struct
{
  double x;     /* of the middle of its heads */
  double force; /* >= 0 */
  double head;  /* length of a head along x */
} BsPressClamp;

/* One place on a glue line. Where two pieces of a course meet, the same x comes twice: left and
 * right of the butt joint. */
typedef struct
{
  double x;
  double pressure_mpa; /* 0 where open */
  double opening;      /* mm between the faces, 0 where closed */
  guint joint;         /* the points of one pair of pieces carry one number, from 0 */
} BsPressPoint;

typedef struct
{
  guint n_points;
  BsPressPoint *points; /* from left to right */
  gboolean is_glued;    /* FALSE: between a caul and the work */
  double area;          /* mm2 */
  double force;         /* N, carried in all */
  double mean_mpa;      /* force / area */
  double from, to;      /* the part that counts: the span, and 10 mm off the ends of the joint */
  double least_mpa, least_x; /* there, and 10 mm off butt joints; NAN when nothing is left */
  double greatest_mpa, greatest_x;
  double open_length;    /* mm, of the part that counts */
  double widest_opening; /* mm, there */
} BsPressLine;

typedef enum
{
  BS_PRESS_STATUS_SOLVED,
  BS_PRESS_STATUS_NOT_SETTLED, /* which spots are open did not settle; the pressures are the last
                                * tried and not to be relied on */
} BsPressStatus;

typedef struct
{
  BsPressStatus status;
  guint n_solves;   /* sets of open spots tried */
  double imbalance; /* greatest |force of a line / force of the clamps - 1|; 0 for no force */
  guint n_lines;    /* courses - 1 */
  BsPressLine *lines;
  guint weakest, hardest; /* glue lines with the least and the greatest pressure */
} BsPressResult;

void bs_press_result_clear (BsPressResult *self);

/* Length (mm) of the part that counts that is pressed by less, and by more, than a limit. */
double bs_press_line_length_below (const BsPressLine *self, double pressure_mpa);
double bs_press_line_length_above (const BsPressLine *self, double pressure_mpa);

typedef struct BsPressing BsPressing;

/* Refuses with BS_PRESS_ERROR_STACK what cannot be pressed: fewer than two courses, sizes that are
 * not positive, pieces that overlap or a course that has none. */
BsPressing *bs_pressing_new (const BsPressStack *stack, GError **error);
void bs_pressing_free (BsPressing *self);

/* Solves for clamps. `result` is overwritten, to be cleared by the caller. Refuses with
 * BS_PRESS_ERROR_CLAMP a clamp whose middle does not lie on both outer faces. A head that hangs
 * over the end of a face is taken as narrower, alike on both sides of its middle. */
gboolean bs_pressing_solve (BsPressing *self, const BsPressClamp *clamps, guint n_clamps,
                            BsPressResult *result, GError **error);

/* The total force (N) of these clamps, all eased or tightened in the same proportion, from which no
 * gap wider than `gap` (mm; what the adhesive fills) is left anywhere: the force spent on pulling
 * bows straight. 0 when there is no such gap from the start; INFINITY when sixteen times their
 * present force does not do it. */
double bs_pressing_closing_force (BsPressing *self, const BsPressClamp *clamps, guint n_clamps,
                                  double gap);

/* As if glue held every joint together, pull counting as negative pressure: the pressure (MPa) at
 * each point of each line, one line after another, n_points in all, from one clamp alone, or from
 * the bows alone (NULL). These add up, as long as the sum pulls nowhere. FALSE for a clamp off the
 * work. */
guint bs_pressing_n_points (const BsPressing *self);
gboolean bs_pressing_glued_response (BsPressing *self, const BsPressClamp *clamp,
                                     double *pressure_mpa);

/* The even load (N) that holds one bowed piece straight by itself: 384 E_L I b / (5 L^3). Source:
 * beam theory, docs/pressing-model.md, Bow. */
double bs_press_piece_straightening_force (const BsPressPiece *self);

#define BS_PRESS_ERROR (bs_press_error_quark ())
GQuark bs_press_error_quark (void);

typedef enum
{
  BS_PRESS_ERROR_STACK,
  BS_PRESS_ERROR_CLAMP,
} BsPressError;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPressing, bs_pressing_free)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BsPressResult, bs_press_result_clear)

G_END_DECLS
