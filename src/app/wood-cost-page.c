/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-cost-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/form.h"
#include "app/number-row.h"
#include "app/page.h"
#include "app/wood-fields.h"
#include "words/table-names.h"
#include "words/timber.h"

enum
{
  ROW_COST,
  ROW_GLUE,
  ROW_WASTE,
  ROW_MASS,
  N_ROWS
};

struct _BsWoodCostPage
{
  GtkWidget parent_instance;

  BsSession *session;
  GtkWidget *page;   /* child */
  GPtrArray *priced; /* char *: ids of the woods whose prices are shown */

  /* borrowed from the page */
  BsNumberRow *rows[N_ROWS];
  BsNumberRow *lifts[BS_N_LOAD_KINDS];
  GtkLabel *words;
  GtkLabel *loads[BS_N_LOAD_KINDS];
  GtkGrid *prices;
};

G_DEFINE_FINAL_TYPE (BsWoodCostPage, bs_wood_cost_page, GTK_TYPE_WIDGET)

static GtkWidget *
label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 48);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* The prices: a field for each wood of the plan. */

static gboolean
are_priced (BsWoodCostPage *self, const GPtrArray *woods)
{
  if (self->priced->len != woods->len)
    return FALSE;
  for (guint i = 0; i < woods->len; i++)
    if (!g_str_equal (self->priced->pdata[i], ((const BsWood *)woods->pdata[i])->id))
      return FALSE;
  return TRUE;
}

static void
attach_price (BsWoodCostPage *self, int row, const BsWood *wood)
{
  GtkWidget *label = label_new (bs_words_wood (wood), NULL);
  GtkWidget *editor
      = bs_field_editor_new (self->session, &bs_record_wood, &bs_wood_price_field, wood->id);

  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_halign (editor, GTK_ALIGN_END);
  gtk_grid_attach (self->prices, label, 0, row, 1, 1);
  gtk_grid_attach (self->prices, editor, 1, row, 1, 1);
  g_ptr_array_add (self->priced, g_strdup (wood->id));
}

static void
show_prices (BsWoodCostPage *self, const GPtrArray *woods)
{
  GtkWidget *child;

  if (are_priced (self, woods))
    return;
  g_ptr_array_set_size (self->priced, 0);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->prices))) != NULL)
    gtk_grid_remove (self->prices, child);
  for (guint i = 0; i < woods->len; i++)
    attach_price (self, (int)i, woods->pdata[i]);
}

/* The numbers. */

/* What is lifted at each step, who lifts it, and why. */
static void
show_loads (BsWoodCostPage *self, const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  const BsLift lift = bs_lift_default ();

  for (guint i = 0; i < BS_N_LOAD_KINDS; i++)
    {
      const BsLoad *load = &results->loads[i];
      const gboolean is_known = !isnan (load->kg);
      BsWorking why;

      bs_lift_explain (load, &lift, plan->shop.people, &why);
      bs_number_row_show (self->lifts[i], &why, plan->units, NULL);
      g_autofree char *text = bs_words_load (load, (BsLoadKind)i, plan->units);
      gtk_label_set_text (self->loads[i], text);
      gtk_widget_set_visible (GTK_WIDGET (self->loads[i]), is_known);
      gtk_widget_set_visible (GTK_WIDGET (self->lifts[i]), is_known);
    }
}

static void
changed_cb (BsWoodCostPage *self)
{
  g_assert (BS_IS_WOOD_COST_PAGE (self));

  const BsResults *results = bs_session_get_results (self->session);
  const BsPlan *plan = results->stack->plan;
  const BsWorking *const workings[N_ROWS] = {
    [ROW_COST] = &results->why_cost,
    [ROW_GLUE] = &results->why_glue,
    [ROW_WASTE] = &results->why_waste,
    [ROW_MASS] = &results->why_mass,
  };

  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  for (guint i = 0; i < N_ROWS; i++)
    bs_number_row_show (self->rows[i], workings[i], plan->units, NULL);

  g_auto (GStrv) sentences = bs_words_cost (&results->cost, plan->currency, plan->units);
  g_autofree char *text = g_strjoinv ("\n", sentences);
  gtk_label_set_text (self->words, text);
  show_loads (self, results);
  show_prices (self, plan->woods);
}

static void
bs_wood_cost_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (bs_wood_cost_page_parent_class)->map (widget);
  changed_cb (BS_WOOD_COST_PAGE (widget));
}

static BsNumberRow *
add_row (GtkWidget *box)
{
  GtkWidget *row = bs_number_row_new ();

  gtk_widget_set_size_request (row, 300, -1);
  gtk_box_append (GTK_BOX (box), row);
  return BS_NUMBER_ROW (row);
}

static GtkWidget *
new_numbers (BsWoodCostPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->words = GTK_LABEL (label_new (NULL, NULL));
  gtk_box_append (GTK_BOX (box), label_new (_ ("Money and weight"), "strong"));
  for (guint i = 0; i < N_ROWS; i++)
    self->rows[i] = add_row (box);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->words));
  return box;
}

static GtkWidget *
new_prices (BsWoodCostPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->prices = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_row_spacing (self->prices, 6);
  gtk_grid_set_column_spacing (self->prices, 12);
  gtk_box_append (GTK_BOX (box), bs_form_new (self->session, N_ ("Prices"), &bs_record_plan, NULL,
                                              &bs_currency_field, 1));
  gtk_box_append (GTK_BOX (box), bs_form_new (self->session, NULL, &bs_record_glue_price, NULL,
                                              &bs_glue_price_field, 1));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->prices));
  gtk_box_append (GTK_BOX (box),
                  bs_form_note_new (_ ("Prices of woods are for rough lumber. A board that has a "
                                       "price of its own costs that.")));
  return box;
}

static GtkWidget *
new_loads (BsWoodCostPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (box), label_new (_ ("What is lifted"), "strong"));
  for (guint i = 0; i < BS_N_LOAD_KINDS; i++)
    {
      self->loads[i] = GTK_LABEL (label_new (NULL, NULL));
      gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->loads[i]));
      self->lifts[i] = add_row (box);
    }
  gtk_box_append (
      GTK_BOX (box),
      bs_form_note_new (_ ("Guidance for planning, for wide things held before the body: local "
                           "rules and the advice of licensed people come first. Long boards and "
                           "slabs tip: support both ends before you let go.")));
  return box;
}

static void
bs_wood_cost_page_dispose (GObject *object)
{
  BsWoodCostPage *self = BS_WOOD_COST_PAGE (object);

  g_clear_pointer (&self->page, gtk_widget_unparent);
  g_clear_pointer (&self->priced, g_ptr_array_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_wood_cost_page_parent_class)->dispose (object);
}

static void
bs_wood_cost_page_class_init (BsWoodCostPageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_wood_cost_page_dispose;
  widget_class->map = bs_wood_cost_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
bs_wood_cost_page_init (BsWoodCostPage *self)
{
  self->priced = g_ptr_array_new_with_free_func (g_free);
}

GtkWidget *
bs_wood_cost_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsWoodCostPage *self = g_object_new (BS_TYPE_WOOD_COST_PAGE, NULL);
  self->session = g_object_ref (session);
  self->page = bs_page_new ();
  bs_page_add (self->page, new_numbers (self));
  bs_page_add (self->page, new_prices (self));
  bs_page_add (self->page, new_loads (self));
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
