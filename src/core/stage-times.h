/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Closing one stage, which is one press of a slab that may take several: how long each joint is
 * open and closed before it is pressed, and what stands in the way. docs/stages-model.md, equations
 * (1) to (6). */

typedef enum
{
  BS_SPREADING_ALTERNATE, /* spread a joint, place a piece, and so on */
  BS_SPREADING_ALL_FIRST, /* spread all joints, then place all pieces */
} BsSpreading;

/* How many clamps a stage needs for the sake of an outer piece that is made of `count` laminations
 * from `first` on. */
typedef int (*BsStagesClamps) (int first, int count, gpointer data);

/* How many a stage of these laminations needs at least for the sake of all that it presses.
 * n_pieces: of the stage, 0 for the fewest of any number. */
typedef int (*BsStagesWholeClamps) (int first, int count, int n_pieces, gpointer data);

/* The job. Units: mm, s, kg. Borrows its arrays. */
typedef struct
{
  int n;                 /* laminations, front to back; at least 1 */
  const double *widths;  /* of each, across the slab */
  const double *masses;  /* of each; NULL: not known */
  double length, height; /* of a glue line */

  int people;
  double spread_s_per_m2, joint_s; /* a joint: spread on its area, and a fixed part */
  double place_s, align_s;         /* a piece */
  double tighten_s;                /* a clamp */
  BsSpreading spreading;

  double open_s, closed_s, total_s; /* what the adhesive allows in this shop */
  double press_s;                   /* in the clamps */
  double rest_s;                    /* from the clamps to planing */

  gboolean planes_packs; /* packs go through the planer before they are glued on */
  double planer_width;
  double plane_s;     /* a pack */
  double max_pack_kg; /* most that a pack may weigh; INFINITY: no limit */

  int clamps;         /* that reach across the slab */
  int pack_clamps;    /* that reach across any pack, the former among them */
  double max_opening; /* of the longest clamp */
  double caul;        /* thickness of the cauls, on each side */
  double max_spacing; /* of clamps, and from the last one to the end of the slab: */
  double end;
  BsStagesClamps clamps_for;     /* an outer piece; NULL: by the rule of spacing */
  BsStagesWholeClamps whole_for; /* a whole stage; NULL: the outer pieces say all */
  gpointer clamps_data;
  int slab_clamps; /* that were chosen for the last stage, whatever the rules say; 0: none were */

  int max_rounds; /* at least 1 */
} BsStagesInput;

/* More clamps than this are counted as this many. */
#define BS_STAGES_MOST_CLAMPS 1000

/* Widths (mm) and masses (kg) that are equal on paper may differ by rounding. */
#define BS_STAGES_ROUNDING 1e-9

typedef struct
{
  double open_s;     /* longest time from glue to contact of any joint */
  double closed_s;   /* longest time from contact to pressure */
  double total_s;    /* from the first glue to the last clamp */
  double assembly_s; /* with the first piece set down */
} BsStageTimes;

/* What a stage breaks first. */
typedef enum
{
  BS_STAGE_LIMIT_NONE,
  BS_STAGE_LIMIT_OPEN,
  BS_STAGE_LIMIT_CLOSED,
  BS_STAGE_LIMIT_TOTAL,
  BS_STAGE_LIMIT_CLAMPS,
  BS_STAGE_LIMIT_OPENING,
  BS_STAGE_LIMIT_PLANER,
  BS_STAGE_LIMIT_WEIGHT,
  BS_STAGE_LIMIT_ROUNDS, /* of the slab as a whole: more rounds would do it */
} BsStageLimit;

#define BS_N_STAGE_LIMITS 9

/* The common rule: clamps no farther apart than max_spacing and than twice the outer piece and its
 * caul together, at least two. */
int bs_stages_clamps_by_spacing (const BsStagesInput *input, double outer_width);

/* For an outer piece and for a whole stage, by the input's own rules; at least 0. */
int bs_stages_clamps_for (const BsStagesInput *input, int first, int count);
int bs_stages_clamps_for_whole (const BsStagesInput *input, int first, int count, int n_pieces);

/* For the last stage of so many pieces (0: of any number), whose outer ones ask for `outer`. */
int bs_stages_clamps_for_slab (const BsStagesInput *input, int outer, int n_pieces);

/* Of a stage of at least two pieces. */
BsStageTimes bs_stage_times (const BsStagesInput *input, int n_pieces, int n_clamps);

/* Of one joint of a stage, counted from 0 in the order of gluing. */
void bs_stage_joint_times (const BsStagesInput *input, int n_pieces, int n_clamps, int joint,
                           double *open_s, double *closed_s);

/* Of the times alone. */
BsStageLimit bs_stage_time_limit (const BsStagesInput *input, const BsStageTimes *times);

/* How many pieces can be joined in time with so many clamps, n at most; 1 when not even two. */
int bs_stage_most_pieces (const BsStagesInput *input, int n_clamps);

/* Of a pack of this width and mass (NAN: not known), whatever its times. */
BsStageLimit bs_stage_pack_limit (const BsStagesInput *input, double width, double mass_kg);

G_END_DECLS
