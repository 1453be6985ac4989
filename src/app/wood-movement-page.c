/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-movement-page.h"

#include <glib/gi18n.h>

#include "app/chart-area.h"
#include "app/form.h"
#include "app/label.h"
#include "app/number-row.h"
#include "app/page.h"
#include "app/wood-fields.h"
#include "core/moisture.h"
#include "core/units.h"
#include "draw/cup-chart.h"
#include "draw/moisture-chart.h"
#include "draw/season-chart.h"
#include "words/timber.h"
#include "words/words.h"

enum
{
  ROW_MOISTURE,
  ROW_SHOP,
  ROW_WIDTH,
  ROW_THICKNESS,
  ROW_CUP,
  N_ROWS
};

enum
{
  CHART_MOISTURE,
  CHART_SEASON,
  CHART_CUP,
  N_CHARTS
};

struct _BsWoodMovementPage
{
  GtkWidget parent_instance;

  BsSession *session;
  GtkWidget *page; /* child */

  /* borrowed from the page */
  GtkWidget *charts[N_CHARTS];
  BsNumberRow *rows[N_ROWS];
  GtkLabel *worst;
  GtkLabel *words;
  GtkBox *slots;
};

G_DEFINE_FINAL_TYPE (BsWoodMovementPage, bs_wood_movement_page, GTK_TYPE_WIDGET)

static const BsResults *
get_results (gpointer self)
{
  return bs_session_get_results (BS_WOOD_MOVEMENT_PAGE (self)->session);
}

/* The charts. */

static double
get_moisture_height (const BsChart *chart, gpointer self)
{
  return bs_moisture_chart_get_height (chart);
}

static void
draw_moisture (cairo_t *cr, const BsChart *chart, gpointer self)
{
  bs_draw_moisture_chart (cr, get_results (self), chart);
}

static double
get_season_height (const BsChart *chart, gpointer self)
{
  return bs_season_chart_get_height (get_results (self), chart);
}

static void
draw_season (cairo_t *cr, const BsChart *chart, gpointer self)
{
  bs_draw_season_chart (cr, get_results (self), chart);
}

static double
get_cup_height (const BsChart *chart, gpointer self)
{
  return bs_cup_chart_get_height (get_results (self), chart);
}

static void
draw_cup (cairo_t *cr, const BsChart *chart, gpointer self)
{
  bs_draw_cup_chart (cr, get_results (self), chart);
}

/* The words. */

/* Findings come worst first. */
static const BsFinding *
find_worst (const BsResults *results)
{
  for (guint i = 0; i < results->findings->len; i++)
    {
      const BsFinding *finding = &g_array_index (results->findings, BsFinding, i);
      if (finding->kind == BS_FINDING_MOISTURE_APART || finding->kind == BS_FINDING_MOISTURE_UNFIT)
        return finding;
    }
  return NULL;
}

static void
show_worst (BsWoodMovementPage *self, const BsResults *results)
{
  const BsFinding *worst = find_worst (results);

  if (worst == NULL)
    {
      gtk_label_set_text (self->worst, results->stack->n > 0
                                           ? _ ("Nothing speaks against the moisture of the "
                                                "laminations, as far as it was measured.")
                                           : "");
      return;
    }
  g_autofree char *reason = bs_words_finding_reason (worst, results);
  g_autofree char *remedy = bs_words_finding_remedy (worst, results);
  /* Translators: a sentence that says what is wrong, and one that says what to do. */
  g_autofree char *text = g_strdup_printf (_ ("The worst: %s %s"), reason, remedy);
  gtk_label_set_text (self->worst, text);
}

static void
show_words (BsWoodMovementPage *self, const BsResults *results)
{
  const BsUnitSystem units = results->stack->plan->units;
  g_auto (GStrv) sentences = bs_words_movement (results);
  g_autofree char *told = g_strjoinv ("\n", sentences);

  if (results->slots->len == 0)
    {
      gtk_label_set_text (self->words, told);
      return;
    }
  g_autofree char *formula = bs_words_movement_formula (&results->movement, units);
  g_autofree char *text = g_strconcat (told, "\n", formula, NULL);
  gtk_label_set_text (self->words, text);
}

/* A number row for each slot, by its distance: its length, and why. */
static void
show_slots (BsWoodMovementPage *self, const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->slots))) != NULL)
    gtk_box_remove (self->slots, child);
  if (results->slots->len == 0)
    return;

  g_autofree char *fixing = bs_words_fixing (results);
  GtkWidget *heading = bs_label_new_wrapped (fixing, NULL);
  gtk_label_set_max_width_chars (GTK_LABEL (heading), 48);
  gtk_box_append (self->slots, heading);
  for (guint i = 0; i < results->slots->len; i++)
    {
      const BsSlot *slot = &g_array_index (results->slots, BsSlot, i);
      GtkWidget *row = bs_number_row_new ();
      g_autofree char *distance = bs_units_format (slot->distance, BS_QUANTITY_LENGTH, plan->units);
      /* Translators: how far a slot is from the line where the slab is held. */
      g_autofree char *note = g_strdup_printf (_ ("at %s"), distance);
      BsWorking why;

      bs_movement_explain_slot (slot, plan->slab.fixing.screw, plan->slab.fixing.play, &why);
      bs_number_row_show (BS_NUMBER_ROW (row), &why, plan->units, note);
      gtk_box_append (self->slots, row);
    }
}

static void
changed_cb (BsWoodMovementPage *self)
{
  g_assert (BS_IS_WOOD_MOVEMENT_PAGE (self));

  const BsResults *results = get_results (self);
  const BsUnitSystem units = results->stack->plan->units;
  BsWorking shop;
  const BsWorking *const workings[N_ROWS] = {
    [ROW_MOISTURE] = &results->why_moisture,
    [ROW_SHOP] = &shop,
    [ROW_WIDTH] = &results->why_width_movement,
    [ROW_THICKNESS] = &results->why_thickness_movement,
    [ROW_CUP] = &results->why_cup,
  };

  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  bs_moisture_explain_shop (&results->stack->plan->shop, &shop);
  for (guint i = 0; i < N_ROWS; i++)
    bs_number_row_show (self->rows[i], workings[i], units, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->rows[ROW_CUP]), results->cupping.is_on_flat);
  show_worst (self, results);
  show_words (self, results);
  show_slots (self, results);
  for (guint i = 0; i < N_CHARTS; i++)
    gtk_widget_queue_resize (self->charts[i]);
}

static void
bs_wood_movement_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (bs_wood_movement_page_parent_class)->map (widget);
  changed_cb (BS_WOOD_MOVEMENT_PAGE (widget));
}

static GtkWidget *
new_numbers (BsWoodMovementPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  for (guint i = 0; i < N_ROWS; i++)
    {
      GtkWidget *row = bs_number_row_new ();
      gtk_widget_set_size_request (row, 300, -1);
      gtk_box_append (GTK_BOX (box), row);
      self->rows[i] = BS_NUMBER_ROW (row);
    }
  return box;
}

static GtkWidget *
new_fixing (BsWoodMovementPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->slots = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  gtk_box_append (GTK_BOX (box),
                  bs_form_new (self->session, N_ ("How it is fastened"), &bs_record_plan, NULL,
                               bs_wood_fixing_fields, bs_n_wood_fixing_fields));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->slots));
  return box;
}

static void
add_block (BsWoodMovementPage *self, const char *heading, GtkWidget *chart, GtkLabel *words)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (block), bs_label_new_wrapped (heading, "strong"));
  gtk_box_append (GTK_BOX (block), chart);
  gtk_box_append (GTK_BOX (block), GTK_WIDGET (words));
  bs_page_add_wide (self->page, block);
}

static void
build (BsWoodMovementPage *self)
{
  self->page = bs_page_new ();
  self->charts[CHART_MOISTURE] = bs_chart_area_new (
      get_moisture_height, draw_moisture, self,
      _ ("Moisture of each lamination against the seasons; what is wrong is told in words below"));
  self->charts[CHART_SEASON] = bs_chart_area_new (
      get_season_height, draw_season, self,
      _ ("The slab at its driest and at its dampest, and its slots; told in numbers below"));
  self->charts[CHART_CUP] = bs_chart_area_new (
      get_cup_height, draw_cup, self, _ ("How the slab cups by its layup; told in words above"));
  self->worst = GTK_LABEL (bs_label_new_wrapped (NULL, NULL));
  self->words = GTK_LABEL (bs_label_new_wrapped (NULL, NULL));

  add_block (self, _ ("Moisture of the laminations"), self->charts[CHART_MOISTURE], self->worst);
  add_block (self, _ ("The slab over the year"), self->charts[CHART_SEASON], self->words);
  bs_page_add_wide (self->page, self->charts[CHART_CUP]);
  bs_page_add (self->page, new_numbers (self));
  bs_page_add (self->page, new_fixing (self));
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
}

static void
bs_wood_movement_page_dispose (GObject *object)
{
  BsWoodMovementPage *self = BS_WOOD_MOVEMENT_PAGE (object);

  g_clear_pointer (&self->page, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_wood_movement_page_parent_class)->dispose (object);
}

static void
bs_wood_movement_page_class_init (BsWoodMovementPageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_wood_movement_page_dispose;
  widget_class->map = bs_wood_movement_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
bs_wood_movement_page_init (BsWoodMovementPage *self)
{
}

GtkWidget *
bs_wood_movement_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsWoodMovementPage *self = g_object_new (BS_TYPE_WOOD_MOVEMENT_PAGE, NULL);
  self->session = g_object_ref (session);
  build (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
