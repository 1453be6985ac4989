/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A lamination as it was marked and measured, in its own frame.
 *
 * The frame is the slab's, for a lamination that has not been turned: x along the grain from the
 * left end, y across the slab from the left face (the one towards the front of the slab) to the
 * right one, z from the underside up to the show face. So `thickness` lies along y, from glue line
 * to glue line, and `height` along z, whether the layup is on edge or on flat.
 *
 * Units: mm. Signed values name the side they point to: bow > 0 when the middle stands out to the
 * right (+y), crook > 0 when it stands out upwards (+z).
 * An unknown number is NAN. */

typedef enum
{
  BS_FACE_LEFT,
  BS_FACE_RIGHT,
  BS_FACE_TOP,
  BS_FACE_UNDERSIDE,
} BsFace;

#define BS_N_FACES 4

/* The four rigid turns that leave the length along x. They combine by XOR. */
typedef enum
{
  BS_ORIENTATION_AS_MARKED = 0,
  BS_ORIENTATION_OVER = 1 << 0,        /* half turn about the length: top down, left to the right */
  BS_ORIENTATION_END_FOR_END = 1 << 1, /* half turn about the vertical: ends change, top stays up */
  BS_ORIENTATION_OVER_AND_END = 3,     /* both: ends change, top down, left stays left */
} BsOrientation;

#define BS_N_ORIENTATIONS 4

/* Which of the lamination's faces is found at `place` of the slab; also the other way round, since
 * each turn undoes itself. */
BsFace bs_orientation_face (BsOrientation self, BsFace place);

/* +1 or -1: what a signed value along x, y or z is multiplied with when it is turned. */
int bs_orientation_sign_x (BsOrientation self);
int bs_orientation_sign_y (BsOrientation self);
int bs_orientation_sign_z (BsOrientation self);

typedef enum
{
  BS_DEFECT_KNOT,
  BS_DEFECT_CHECK,
  BS_DEFECT_WANE,
  BS_DEFECT_STAIN,
  BS_DEFECT_BARK_POCKET,
  BS_DEFECT_SAPWOOD,
  BS_DEFECT_PITH,
  BS_DEFECT_HOLE,
} BsDefectKind;

#define BS_N_DEFECT_KINDS 8

typedef struct
{
  BsDefectKind kind;
  BsFace face;         /* of the lamination as marked */
  double x_from, x_to; /* along the length, from the left end */
  double across_from;  /* on a left or right face from the underside up, */
  double across_to;    /* on a top or underside from the left face */
  double severity;     /* 0 (hardly seen) to 2 (spoils the face) */
  GRefString *unknown; /* see BsPlan */
} BsDefect;

typedef struct
{
  GRefString *id;    /* never changes; refers to this lamination everywhere */
  GRefString *label; /* what is written on the wood: "A", "7" */
  GRefString *board; /* id of the board it was cut from, or NULL */
  GRefString *wood;  /* id of a wood in the plan */

  double length;
  double thickness; /* along y */
  double height;    /* along z, at the left end */

  double bow;   /* middle towards +y against a line between the ends */
  double crook; /* middle towards +z */
  double cup;   /* hollow across the wide face; > 0 when the middle stands out towards +y (on
                 * edge) or +z (on flat) */
  double twist; /* how far one corner stands off with the other three down; > 0 when, seen
                 * from the left end, the right end is turned from +y towards +z */
  double taper; /* height at the right end less height at the left end; of these five: NAN where not
                 * measured, which counts as none */

  double pith_y; /* the pith (centre of the growth rings), from the middle of the section; */
  double pith_z; /* mostly outside of it. NAN when unknown */

  int run_out_top;       /* on the top face: +1 planes cleanly towards the right end, -1 towards */
  int run_out_underside; /* the left end, 0 either way or unknown; likewise the underside */

  double lightness;    /* colour as CIE L*, 0 (black) to 100 (white); NAN unknown */
  double moisture_pct; /* NAN unknown */

  GArray *defects;     /* BsDefect */
  GRefString *unknown; /* see BsPlan */
} BsLamination;

/* A list of BsDefect that frees what they hold; a copy is one's own. */
GArray *bs_defects_new (void);
GArray *bs_defects_copy (const GArray *self);

/* Laminations are shared by the plans of an editing session and never change once in a plan. */
BsLamination *bs_lamination_new (const char *id);
BsLamination *bs_lamination_ref (BsLamination *self);
void bs_lamination_unref (BsLamination *self);

/* A copy of one's own, to be changed before it is put in a plan. */
BsLamination *bs_lamination_copy (const BsLamination *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsLamination, bs_lamination_unref)

G_END_DECLS
