/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/proposal-numbers.h"

#include <glib/gi18n.h>

#include "app/number-row.h"
#include "core/units.h"
#include "words/order.h"

/* The numbers of the proposal that have a working, each with what it is now; then the terms of the
 * cost, of which only those are shown that are not nothing. */

typedef struct
{
  GtkWidget *name, *now, *then;
} Row;

struct _BsProposalNumbers
{
  GtkWidget parent_instance;

  GtkWidget *order, *thickness, *pressure; /* BsNumberRow */
  GtkWidget *grid;
  Row findings;
  Row terms[BS_N_ORDER_TERMS];
};

G_DEFINE_FINAL_TYPE (BsProposalNumbers, bs_proposal_numbers, GTK_TYPE_WIDGET)

static GtkWidget *
label_new (const char *text, float xalign, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static Row
attach_row (GtkGrid *grid, int at, const char *name)
{
  Row row = { label_new (name, 0.0f, NULL), label_new (NULL, 1.0f, NULL),
              label_new (NULL, 1.0f, NULL) };

  gtk_grid_attach (grid, row.name, 0, at, 1, 1);
  gtk_grid_attach (grid, row.now, 1, at, 1, 1);
  gtk_grid_attach (grid, row.then, 2, at, 1, 1);
  return row;
}

static void
show_row (const Row *row, const char *now, const char *then, gboolean is_visible)
{
  gtk_label_set_text (GTK_LABEL (row->now), now);
  gtk_label_set_text (GTK_LABEL (row->then), then);
  gtk_widget_set_visible (row->name, is_visible);
  gtk_widget_set_visible (row->now, is_visible);
  gtk_widget_set_visible (row->then, is_visible);
}

static void
show_term (BsProposalNumbers *self, guint i, const BsResults *present, const BsResults *proposed)
{
  gint32 now = present->order.terms[i], then = proposed->order.terms[i];
  g_autofree char *now_text = bs_words_order_points (now);
  g_autofree char *then_text = bs_words_order_points (then);

  show_row (&self->terms[i], now_text, then_text, now != 0 || then != 0);
}

static void
show_findings (BsProposalNumbers *self, const BsResults *present, const BsResults *proposed)
{
  g_autofree char *now = g_strdup_printf ("%u", present->findings->len);
  g_autofree char *then = g_strdup_printf ("%u", proposed->findings->len);

  show_row (&self->findings, now, then, TRUE);
}

static void
show_number (GtkWidget *row, const BsWorking *now, const BsWorking *then, BsUnitSystem units)
{
  g_autofree char *value = bs_units_format (now->value, now->quantity, units);
  /* Translators: beside a number of a proposed order: the same of the present one. */
  g_autofree char *note = g_strdup_printf (_ ("now %s"), value);

  bs_number_row_show (BS_NUMBER_ROW (row), then, units, note);
}

static void
bs_proposal_numbers_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_proposal_numbers_parent_class)->dispose (object);
}

static void
bs_proposal_numbers_class_init (BsProposalNumbersClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_proposal_numbers_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
bs_proposal_numbers_init (BsProposalNumbers *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkGrid *grid;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 12);
  self->order = bs_number_row_new ();
  self->thickness = bs_number_row_new ();
  self->pressure = bs_number_row_new ();
  self->grid = gtk_grid_new ();
  grid = GTK_GRID (self->grid);
  gtk_grid_set_column_spacing (grid, 18);
  gtk_grid_attach (grid, label_new (C_ ("order", "Now"), 1.0f, "faint"), 1, 0, 1, 1);
  gtk_grid_attach (grid, label_new (C_ ("order", "Proposed"), 1.0f, "faint"), 2, 0, 1, 1);
  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    self->terms[i] = attach_row (grid, (int)i + 1, _ (bs_order_term_name ((BsOrderTerm)i)));
  self->findings = attach_row (grid, BS_N_ORDER_TERMS + 1, _ ("Findings"));
  gtk_widget_set_parent (self->order, GTK_WIDGET (self));
  gtk_widget_set_parent (self->thickness, GTK_WIDGET (self));
  gtk_widget_set_parent (self->pressure, GTK_WIDGET (self));
  gtk_widget_set_visible (self->pressure, FALSE);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
}

GtkWidget *
bs_proposal_numbers_new (void)
{
  return g_object_new (BS_TYPE_PROPOSAL_NUMBERS, NULL);
}

void
bs_proposal_numbers_show (BsProposalNumbers *self, const BsResults *present,
                          const BsResults *proposed)
{
  g_return_if_fail (BS_IS_PROPOSAL_NUMBERS (self));

  BsUnitSystem units = proposed->stack->plan->units;

  show_number (self->order, &present->why_order, &proposed->why_order, units);
  show_number (self->thickness, &present->why_thickness, &proposed->why_thickness, units);
  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    show_term (self, i, present, proposed);
  show_findings (self, present, proposed);
}

void
bs_proposal_numbers_show_pressure (BsProposalNumbers *self, const BsPressure *present,
                                   const BsPressure *proposed)
{
  g_return_if_fail (BS_IS_PROPOSAL_NUMBERS (self));

  gboolean is_known = present != NULL && proposed != NULL;

  gtk_widget_set_visible (self->pressure, is_known);
  if (is_known)
    show_number (self->pressure, &present->why, &proposed->why, proposed->stack->plan->units);
}
