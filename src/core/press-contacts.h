/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/band.h"
#include "core/press-mesh.h"

G_BEGIN_DECLS

/* Which spots of a mesh are open, and the equations factored for that: docs/pressing-model.md,
 * Opening and closing. */
typedef struct
{
  const BsPressMesh *mesh;
  guint n;
  const BsPressContact *contacts; /* the mesh's */

  BsBand *band;         /* the equations as they are factored, NULL at first */
  gboolean *is_closed;  /* for each contact: all at first */
  gboolean is_factored; /* for this set */

  /* For each contact: the overlap of its faces less the gap (mm, < 0 open), and the force (N, < 0
   * pulls) of the springs that were taken for closed */
  double *overlaps, *forces;         /* where we are */
  double *new_overlaps, *new_forces; /* where the present set of closed spots leads */
  double *unknowns;
} BsPressContacts;

/* Borrows the mesh. */
void bs_press_contacts_init (BsPressContacts *self, const BsPressMesh *mesh);
void bs_press_contacts_clear (BsPressContacts *self);

/* Takes this set of closed spots, one for each contact. */
void bs_press_contacts_set_closed (BsPressContacts *self, const gboolean *is_closed);

/* Finds which spots are open under these loads (one for each unknown); begins with the set of the
 * last call. `overlaps` and `forces` are filled. FALSE when the set did not settle. */
gboolean bs_press_contacts_settle (BsPressContacts *self, const double *loads, guint *n_solves);

/* Fills `new_forces` as if glue held every spot; the bows count only when asked for. FALSE when the
 * equations could not be factored. */
gboolean bs_press_contacts_glue (BsPressContacts *self, const double *loads, gboolean with_bow);

G_END_DECLS
