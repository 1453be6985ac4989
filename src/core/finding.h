/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Something that the plan gets wrong or that the maker must know. Its words are made in the words
 * layer; here are only the kind, the laminations and the values that the sentence needs. */

typedef enum
{
  BS_FINDING_TOO_FEW_LAMINATIONS, /* values: laminations in the slab */
  BS_FINDING_THIN,                /* values: thickness, wanted */
  BS_FINDING_NARROW,              /* values: width of the stack, wanted */
  BS_FINDING_SHORT,               /* values: length that every course covers, wanted */
  BS_FINDING_RUN_OUT,             /* lamination that planes against most of the show face */
  BS_FINDING_DEFECT_SHOWS,        /* lamination; values: severity, x from, x to; defect kind */
  BS_FINDING_HEARTS_ALIKE,        /* lamination and its neighbour */
  BS_FINDING_MOISTURE_APART,      /* lamination and its neighbour; values: difference, limit */
  BS_FINDING_MOISTURE_UNFIT,      /* lamination; values: moisture, EMC low, EMC high */
  BS_FINDING_CLAMPS_MISSING,      /* values: needed, owned that fit */
  BS_FINDING_CLAMPS_WEAK,         /* values: force needed in all, force of all that fit */
  BS_FINDING_CLAMP_REACH,         /* values: reach needed, longest reach owned; count too short */
  BS_FINDING_CRUSHING,            /* values: stress under a head, strength */
  BS_FINDING_CLAMPS_PLACED,       /* values: placed of one kind, owned; its place in the shop */
  BS_FINDING_CLAMP_FORCED,        /* values: force, greatest of its kind; its place in the shop */
  BS_FINDING_OPEN_TIME,           /* values: time needed, limit, 0 (in all) or 1 (lying open) */
  BS_FINDING_COLD,                /* values: temperature of the shop, least for the adhesive */
  BS_FINDING_HEAVY,               /* values: mass of the slab, most that is lifted */
  BS_FINDING_PLANER_NARROW,       /* values: width of the slab, width of the planer */
  BS_FINDING_WOOD_UNKNOWN,        /* lamination */
} BsFindingKind;

#define BS_N_FINDING_KINDS 20

typedef enum
{
  BS_SEVERITY_NOTE,    /* good to know */
  BS_SEVERITY_CAUTION, /* will show, or needs care */
  BS_SEVERITY_STOP,    /* do not start like this */
} BsSeverity;

#define BS_FINDING_MAX_VALUES 3

typedef struct
{
  BsFindingKind kind;
  BsSeverity severity;
  int place;     /* of the lamination in the order, from 0; -1: the slab as a whole */
  int neighbour; /* place of the other one, or -1 */
  int detail;    /* BsDefectKind of a defect; place of a kind of clamp in the shop; else 0 */
  double values[BS_FINDING_MAX_VALUES];
} BsFinding;

G_END_DECLS
