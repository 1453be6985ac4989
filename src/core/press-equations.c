/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/press-equations.h"

/* Bending and shear of a piece between two nodes: the exact stiffness of a shear beam that is
 * loaded at its ends only, so that the mesh may be coarse. Unknowns of the left node from `a`, of
 * the right one from `b`. */
static void
add_bending (BsBand *band, const BsPressBeam *beam, guint a, guint b, double length)
{
  double phi = 12.0 * beam->bending / (beam->shear * length * length);
  double c = beam->bending / (length * length * length * (1.0 + phi));
  double near = c * (4.0 + phi) * length * length, far = c * (2.0 - phi) * length * length;

  bs_band_add (band, a, a, 12.0 * c);
  bs_band_add (band, a + 1, a, 6.0 * c * length);
  bs_band_add (band, a + 1, a + 1, near);
  bs_band_add (band, b, a, -12.0 * c);
  bs_band_add (band, b, a + 1, -6.0 * c * length);
  bs_band_add (band, b, b, 12.0 * c);
  bs_band_add (band, b + 1, a, 6.0 * c * length);
  bs_band_add (band, b + 1, a + 1, far);
  bs_band_add (band, b + 1, b, -6.0 * c * length);
  bs_band_add (band, b + 1, b + 1, near);
}

/* The squeeze between two nodes: springs at the nodes, and one between them for its change along x.
 */
static void
add_squeeze (BsBand *band, const BsPressBeam *beam, guint a, guint b, double length)
{
  double at_node = beam->squeeze * length / 2.0 + beam->spread / length;

  bs_band_add (band, a + 2, a + 2, at_node);
  bs_band_add (band, b + 2, b + 2, at_node);
  bs_band_add (band, b + 2, a + 2, -beam->spread / length);
}

/* Holds one piece of the middle course at its two ends. The loads balance, so that these supports
 * carry nothing; without them the pile could move as a whole, which the anchors alone stop so
 * softly that rounding spoils the equations of a fine mesh. The middle course, since it moves
 * least. */
static void
add_supports (BsBand *band, const BsPressMesh *mesh)
{
  const BsPressBeam *beam = &mesh->beams[mesh->n_beams / 2];
  guint n_elements = beam->last - beam->first;
  double length = mesh->stations[beam->last] - mesh->stations[beam->first];
  double stiffness = beam->squeeze * length / n_elements;

  bs_band_add (band, beam->unknown[0], beam->unknown[0], stiffness);
  bs_band_add (band, beam->unknown[n_elements], beam->unknown[n_elements], stiffness);
}

void
bs_press_equations_add_beams (BsBand *band, const BsPressMesh *mesh)
{
  for (guint i = 0; i < mesh->n_beams; i++)
    {
      const BsPressBeam *beam = &mesh->beams[i];

      for (guint j = 0; j < beam->last - beam->first; j++)
        {
          guint a = beam->unknown[j], b = beam->unknown[j + 1];
          double length = mesh->stations[beam->first + j + 1] - mesh->stations[beam->first + j];

          add_bending (band, beam, a, b, length);
          bs_band_add (band, a, a, beam->anchor * length / 2.0);
          bs_band_add (band, b, b, beam->anchor * length / 2.0);
          if (mesh->per_node == 3)
            add_squeeze (band, beam, a, b, length);
        }
    }
  add_supports (band, mesh);
}

/* The overlap is (w - s/2) of the front piece less (w + s/2) of the back one. */
void
bs_press_equations_add_contact (BsBand *band, const BsPressMesh *mesh,
                                const BsPressContact *contact)
{
  guint f = contact->front, b = contact->back;
  double k = contact->stiffness;

  bs_band_add (band, f, f, k);
  bs_band_add (band, b, b, k);
  bs_band_add (band, b, f, -k);
  if (mesh->per_node == 2)
    return;
  bs_band_add (band, f + 2, f, -k / 2.0);
  bs_band_add (band, f + 2, f + 2, k / 4.0);
  bs_band_add (band, b, f + 2, k / 2.0);
  bs_band_add (band, b + 2, f, -k / 2.0);
  bs_band_add (band, b + 2, f + 2, k / 4.0);
  bs_band_add (band, b + 2, b, k / 2.0);
  bs_band_add (band, b + 2, b + 2, k / 4.0);
}

double
bs_press_equations_overlap (const BsPressMesh *mesh, const BsPressContact *contact,
                            const double *unknowns)
{
  double overlap = unknowns[contact->front] - unknowns[contact->back];

  if (mesh->per_node == 3)
    overlap -= (unknowns[contact->front + 2] + unknowns[contact->back + 2]) / 2.0;
  return overlap;
}

void
bs_press_equations_push_apart (double *loads, const BsPressMesh *mesh,
                               const BsPressContact *contact, double force)
{
  loads[contact->front] -= force;
  loads[contact->back] += force;
  if (mesh->per_node == 2)
    return;
  loads[contact->front + 2] += force / 2.0;
  loads[contact->back + 2] += force / 2.0;
}

/* A force on an outer face moves the piece inwards and squeezes it. */
static void
push_node (double *loads, const BsPressMesh *mesh, guint unknown, gboolean is_back, double force)
{
  loads[unknown] += is_back ? -force : force;
  if (mesh->per_node == 3)
    loads[unknown + 2] += force / 2.0;
}

void
bs_press_equations_push_face (double *loads, const BsPressMesh *mesh, guint piece, gboolean is_back,
                              double x_from, double x_to, double per_mm)
{
  const BsPressBeam *beam = &mesh->beams[piece];

  for (guint j = 0; j < beam->last - beam->first; j++)
    {
      double left = mesh->stations[beam->first + j];
      double right = mesh->stations[beam->first + j + 1];
      double from = MAX (x_from, left), to = MIN (x_to, right);
      double force = per_mm * (to - from);
      double right_share = ((from + to) / 2.0 - left) / (right - left);

      if (from >= to)
        continue;
      push_node (loads, mesh, beam->unknown[j], is_back, force * (1.0 - right_share));
      push_node (loads, mesh, beam->unknown[j + 1], is_back, force * right_share);
    }
}
