/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/pressing.h"

G_BEGIN_DECLS

/* The stack of a pressing cut into beam elements: docs/pressing-model.md, From beams to equations.
 *
 * Stations are the places along x that hold nodes; every end of a piece is one. A piece has a node
 * at each of its stations, with 3 unknowns (deflection w, rotation r, squeeze s) or 2 (w, r). The
 * unknowns are numbered station by station and, within one, from front to back, which keeps the
 * band narrow. */

typedef struct
{
  guint first, last; /* stations of its ends */
  guint *unknown;    /* of its nodes: number of the first unknown (w) */
  double squeeze;    /* stiffness of the thickness K, N/mm for each mm of length; */
  double spread;     /* of its change along x J, N; */
  double bending;    /* E_L I, N mm2; */
  double shear;      /* kappa G A, N; */
  double anchor;     /* of the soft springs that keep it in place, N/mm for each mm */
} BsPressBeam;

/* A spot where two faces may touch: a node of one piece and the node opposite. */
typedef struct
{
  guint front, back; /* number of the first unknown of either node */
  double length;     /* that it stands for, mm */
  double stiffness;  /* spring, N/mm */
  double gap;        /* between the faces before anything is pressed, mm */
} BsPressContact;

/* Contacts of one pair of pieces, from left to right: those from `first` on. */
typedef struct
{
  guint line;        /* 0: between the first course and the second */
  guint front, back; /* pieces */
  guint first, n;
  guint station;         /* of the first contact */
  double height;         /* of the face that they share, mm */
  double line_stiffness; /* k, N/mm for each mm of length */
} BsPressSegment;

typedef struct
{
  guint n_courses;
  guint n_stations;
  double *stations; /* x, mm */
  guint n_beams;
  BsPressBeam *beams; /* one for each piece */
  GArray *contacts;   /* BsPressContact */
  GArray *segments;   /* BsPressSegment, by line, then from left to right */
  guint per_node;     /* unknowns of a node: 2 or 3 */
  guint n_unknowns;
  guint half_width; /* of the band */
} BsPressMesh;

/* The stack must have passed its checks (bs_pressing_new). Free with bs_press_mesh_free. */
BsPressMesh *bs_press_mesh_new (const BsPressStack *stack);
void bs_press_mesh_free (BsPressMesh *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPressMesh, bs_press_mesh_free)

G_END_DECLS
