/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/press-contacts.h"

#include "core/press-equations.h"

#include <math.h>
#include <string.h>

/* Sets of open spots tried before giving up. Usual: 1 when all stays closed, 3 to 6 with open
 * spots, up to a hundred against a plane that hardly gives. */
#define MAX_SOLVES 200

/* A spot counts as wrongly open or closed only from this part of the greatest spot force: below,
 * its sign is rounding. */
#define SPOT_TOLERANCE 1e-9

/* Halvings that find the least energy along a line, to the last bits. */
#define N_HALVINGS 50

void
bs_press_contacts_init (BsPressContacts *self, const BsPressMesh *mesh)
{
  *self = (BsPressContacts){ .mesh = mesh, .n = mesh->contacts->len };
  self->contacts = (const BsPressContact *)(void *)mesh->contacts->data;
  self->is_closed = g_new (gboolean, self->n);
  for (guint c = 0; c < self->n; c++)
    self->is_closed[c] = TRUE;
  self->overlaps = g_new0 (double, self->n);
  self->forces = g_new0 (double, self->n);
  self->new_overlaps = g_new0 (double, self->n);
  self->new_forces = g_new0 (double, self->n);
  self->unknowns = g_new0 (double, mesh->n_unknowns);
}

void
bs_press_contacts_clear (BsPressContacts *self)
{
  g_clear_pointer (&self->band, bs_band_free);
  g_free (self->is_closed);
  g_free (self->overlaps);
  g_free (self->forces);
  g_free (self->new_overlaps);
  g_free (self->new_forces);
  g_free (self->unknowns);
}

void
bs_press_contacts_set_closed (BsPressContacts *self, const gboolean *is_closed)
{
  if (memcmp (self->is_closed, is_closed, sizeof (gboolean) * self->n) == 0)
    return;
  memcpy (self->is_closed, is_closed, sizeof (gboolean) * self->n);
  self->is_factored = FALSE;
}

/* Takes the set of closed spots that is wanted for the one that counts, and factors its equations,
 * unless they already are. */
static gboolean
ensure_factored (BsPressContacts *self)
{
  if (self->is_factored)
    return TRUE;
  if (self->band == NULL)
    self->band = bs_band_new (self->mesh->n_unknowns, self->mesh->half_width);
  else
    bs_band_reset (self->band);
  bs_press_equations_add_beams (self->band, self->mesh);
  for (guint c = 0; c < self->n; c++)
    if (self->is_closed[c])
      bs_press_equations_add_contact (self->band, self->mesh, &self->contacts[c]);
  self->is_factored = bs_band_factor (self->band);
  return self->is_factored;
}

/* Solves with the present set of closed spots; `unknowns` holds the loads of the clamps. A bow acts
 * as a gap that the spring of a closed spot must bridge. */
static void
solve_set (BsPressContacts *self, gboolean with_bow)
{
  for (guint c = 0; with_bow && c < self->n; c++)
    if (self->is_closed[c])
      bs_press_equations_push_apart (self->unknowns, self->mesh, &self->contacts[c],
                                     -self->contacts[c].stiffness * self->contacts[c].gap);
  bs_band_solve (self->band, self->unknowns);
  for (guint c = 0; c < self->n; c++)
    {
      const BsPressContact *contact = &self->contacts[c];

      self->new_overlaps[c] = bs_press_equations_overlap (self->mesh, contact, self->unknowns);
      if (with_bow)
        self->new_overlaps[c] -= contact->gap;
      self->new_forces[c] = self->is_closed[c] ? contact->stiffness * self->new_overlaps[c] : 0.0;
    }
}

/* Slope of the energy after a part of the way from where we are to where the set leads. Beams and
 * loads together are in balance with the spot forces of either end, so only the spots count. */
static double
energy_slope (const BsPressContacts *self, double part)
{
  double slope = 0.0;

  for (guint c = 0; c < self->n; c++)
    {
      double way = self->new_overlaps[c] - self->overlaps[c];
      double overlap = self->overlaps[c] + part * way;
      double taken = self->forces[c] + part * (self->new_forces[c] - self->forces[c]);

      slope += way * (self->contacts[c].stiffness * fmax (0.0, overlap) - taken);
    }
  return slope;
}

/* The part of the way at which the energy is least: its slope rises, so halve. */
static double
find_least_energy (const BsPressContacts *self)
{
  double low = 0.0, high = 1.0;

  if (energy_slope (self, 1.0) <= 0.0)
    return 1.0;
  for (guint i = 0; i < N_HALVINGS; i++)
    {
      double middle = (low + high) / 2.0;

      if (energy_slope (self, middle) <= 0.0)
        low = middle;
      else
        high = middle;
    }
  return low;
}

static void
go_part (BsPressContacts *self, double part)
{
  for (guint c = 0; c < self->n; c++)
    {
      self->overlaps[c] += part * (self->new_overlaps[c] - self->overlaps[c]);
      self->forces[c] += part * (self->new_forces[c] - self->forces[c]);
    }
}

/* Whether each spot that is taken for closed is pressed, and each open one is apart. */
static gboolean
set_fits (const BsPressContacts *self)
{
  double greatest = 0.0;

  for (guint c = 0; c < self->n; c++)
    greatest = fmax (greatest, self->contacts[c].stiffness * fabs (self->overlaps[c]));
  for (guint c = 0; c < self->n; c++)
    if (self->is_closed[c] != (self->overlaps[c] > 0.0)
        && self->contacts[c].stiffness * fabs (self->overlaps[c]) > SPOT_TOLERANCE * greatest)
      return FALSE;
  return TRUE;
}

static void
choose_set (BsPressContacts *self)
{
  for (guint c = 0; c < self->n; c++)
    self->is_closed[c] = self->overlaps[c] > 0.0;
  self->is_factored = FALSE;
}

/* Newton's method on the energy, which is convex and, for each set of closed spots, quadratic. */
gboolean
bs_press_contacts_settle (BsPressContacts *self, const double *loads, guint *n_solves)
{
  for (*n_solves = 0; *n_solves < MAX_SOLVES && ensure_factored (self);)
    {
      double part;

      memcpy (self->unknowns, loads, sizeof (double) * self->mesh->n_unknowns);
      solve_set (self, TRUE);
      part = *n_solves == 0 ? 1.0 : find_least_energy (self);
      go_part (self, part);
      (*n_solves)++;
      if (part >= 1.0 && set_fits (self))
        return TRUE;
      choose_set (self);
    }
  return FALSE;
}

gboolean
bs_press_contacts_glue (BsPressContacts *self, const double *loads, gboolean with_bow)
{
  for (guint c = 0; c < self->n; c++)
    if (!self->is_closed[c])
      {
        self->is_closed[c] = TRUE;
        self->is_factored = FALSE;
      }
  if (!ensure_factored (self))
    return FALSE;
  memcpy (self->unknowns, loads, sizeof (double) * self->mesh->n_unknowns);
  solve_set (self, with_bow);
  return TRUE;
}
