/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/band.h"
#include "core/press-mesh.h"

G_BEGIN_DECLS

/* Stiffness and loads of a mesh: docs/pressing-model.md, From beams to equations. */

/* Adds the stiffness of all pieces, without contacts. */
void bs_press_equations_add_beams (BsBand *band, const BsPressMesh *mesh);

/* Adds the spring of one closed contact. */
void bs_press_equations_add_contact (BsBand *band, const BsPressMesh *mesh,
                                     const BsPressContact *contact);

/* How far the two faces of a contact overlap (mm), gap apart, given the unknowns. */
double bs_press_equations_overlap (const BsPressMesh *mesh, const BsPressContact *contact,
                                   const double *unknowns);

/* Adds to the loads a force (N) that pushes the two faces of a contact apart. */
void bs_press_equations_push_apart (double *loads, const BsPressMesh *mesh,
                                    const BsPressContact *contact, double force);

/* Adds a force (`per_mm`, N/mm) spread from x_from to x_to over the outer face of one piece, as far
 * as the piece reaches: towards +y on the front of the stack, towards -y on its back. */
void bs_press_equations_push_face (double *loads, const BsPressMesh *mesh, guint piece,
                                   gboolean is_back, double x_from, double x_to, double per_mm);

G_END_DECLS
