/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/purchase-view.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/blocks.h"
#include "app/number-row.h"
#include "app/page.h"
#include "core/money.h"
#include "core/units.h"
#include "draw/cutting.h"
#include "draw/lettering.h"
#include "words/buying.h"

/* The numbers, in the order in which they stand. */
typedef void (*Explain) (const BsPurchase *purchase, BsWorking *why);

static const Explain explains[] = {
  bs_purchase_explain_price, bs_purchase_explain_bound, bs_purchase_explain_measure,
  bs_purchase_explain_waste, bs_purchase_explain_extra,
};

#define N_NUMBERS G_N_ELEMENTS (explains)

struct _BsPurchaseView
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *flow;
  GtkWidget *list;
  GtkWidget *picture;
  GtkWidget *offcuts_heading;
  GtkWidget *offcuts;
  /* borrowed from the flow */
  BsNumberRow *numbers[N_NUMBERS];
  /* owned: what the picture shows */
  BsPurchaseSawn *sawn;
};

G_DEFINE_FINAL_TYPE (BsPurchaseView, bs_purchase_view, GTK_TYPE_WIDGET)

static void
attach (BsPurchaseView *self, int column, int row, const char *text, const char *css_class)
{
  GtkWidget *label = bs_page_text_new (text, css_class);

  gtk_label_set_wrap (GTK_LABEL (label), column == 1);
  gtk_label_set_xalign (GTK_LABEL (label), column == 1 ? 0.0f : 1.0f);
  gtk_widget_set_hexpand (label, column == 1);
  gtk_grid_attach (GTK_GRID (self->list), label, column, row, 1, 1);
}

static void
attach_head (BsPurchaseView *self)
{
  const char *titles[] = { _ ("Boards"),     _ ("Offer"),  _ ("Length"), _ ("Width"),
                           _ ("Board feet"), _ ("Volume"), _ ("Price") };

  for (guint i = 0; i < G_N_ELEMENTS (titles); i++)
    attach (self, (int)i, 0, titles[i], "faint");
}

static void
attach_line (BsPurchaseView *self, const BsPurchase *purchase, guint index)
{
  const BsPlan *plan = purchase->plan;
  const BsPurchaseLine *line = &g_array_index (purchase->lines, BsPurchaseLine, index);
  const BsOffer *offer = g_ptr_array_index (plan->offers, line->offer);
  int row = (int)index + 1;
  g_autofree char *count = g_strdup_printf ("%d", line->count);
  g_autofree char *name = bs_words_offer (plan, offer);
  g_autofree char *length = bs_words_board_length (line->length, plan->units);
  g_autofree char *width = bs_words_purchase_width (purchase, line);
  g_autofree char *feet = g_strdup_printf ("%.2f", line->board_feet);
  g_autofree char *volume
      = bs_units_format (line->volume, BS_QUANTITY_VOLUME, BS_UNIT_SYSTEM_METRIC);
  g_autofree char *price
      = bs_money_format (line->price_minor > 0 ? (double)line->price_minor : NAN, plan->currency);
  const char *texts[] = { count, name, length, width, feet, volume, price };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    attach (self, (int)i, row, texts[i], i == 0 ? "strong" : NULL);
}

static void
show_list (BsPurchaseView *self, const BsPurchase *purchase)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_grid_remove (GTK_GRID (self->list), child);
  gtk_widget_set_visible (self->list, purchase->lines->len > 0);
  attach_head (self);
  for (guint i = 0; i < purchase->lines->len; i++)
    attach_line (self, purchase, i);
}

static void
show_numbers (BsPurchaseView *self, const BsPurchase *purchase)
{
  for (guint i = 0; i < N_NUMBERS; i++)
    {
      BsWorking why;

      explains[i](purchase, &why);
      bs_number_row_show (self->numbers[i], &why, purchase->plan->units, NULL);
    }
}

static void
show_offcuts (BsPurchaseView *self, const BsPurchase *purchase)
{
  g_auto (GStrv) lines = bs_words_purchase_offcuts (purchase);
  g_autofree char *text = g_strjoinv ("\n", lines);

  gtk_label_set_text (GTK_LABEL (self->offcuts), text);
  gtk_widget_set_visible (self->offcuts, purchase->offcuts->len > 0);
  gtk_widget_set_visible (self->offcuts_heading, purchase->offcuts->len > 0);
}

/* The picture: the boards that are sawn, under one another at one scale. */

#define GAP 12.0
#define CAPTION 1.6     /* above a board, in heights of the text */
#define MOST_PER_MM 0.4 /* a short board is not blown up */

static BsCutStyle
get_style (BsPurchaseView *self, double width)
{
  double longest = 1.0;

  for (guint i = 0; i < self->sawn->boards->len; i++)
    longest = fmax (longest, ((BsSawnBoard *)self->sawn->boards->pdata[i])->board->length);
  return (BsCutStyle){
    .per_mm = fmin (width / longest, MOST_PER_MM),
    .hairline = 1.0,
    .text_size = bs_appearance_find_text_size (GTK_WIDGET (self)),
    .palette = bs_appearance_find_palette (GTK_WIDGET (self)),
    .without_numbers = TRUE,
  };
}

/* What board it is, above it. */
static void
letter_board (BsPurchaseView *self, cairo_t *cr, guint index, const BsCutStyle *style)
{
  BsLettering lettering = { .size = style->text_size };
  g_autofree char *text = bs_words_purchase_board (self->sawn, index);

  bs_color_set (&style->palette->ink, cr);
  bs_lettering_draw (cr, text, &lettering, 0.0, -0.3 * style->text_size, 0.0, 1.0);
}

/* Draws them from the top when cr is not NULL; returns how high they are. */
static double
draw_boards (BsPurchaseView *self, cairo_t *cr, double width)
{
  BsCutStyle style = get_style (self, width);
  double caption = CAPTION * style.text_size, y = 0.0;

  for (guint i = 0; i < self->sawn->boards->len; i++)
    {
      const BsSawnBoard *sawn = self->sawn->boards->pdata[i];

      if (cr != NULL)
        {
          cairo_save (cr);
          cairo_translate (cr, 0.0, y + caption);
          letter_board (self, cr, i, &style);
          bs_draw_cut_board (cr, self->sawn->plan, sawn, &style);
          cairo_restore (cr);
        }
      y += caption + sawn->board->width * style.per_mm + GAP;
    }
  return y;
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data)
{
  BsPurchaseView *self = user_data;

  if (self->sawn != NULL)
    draw_boards (self, cr, width);
}

static void
resize_cb (GtkDrawingArea *area, int width, int height, gpointer user_data)
{
  BsPurchaseView *self = user_data;

  if (self->sawn != NULL)
    gtk_drawing_area_set_content_height (area, (int)ceil (draw_boards (self, NULL, width)));
}

static void
forget_picture (BsPurchaseView *self)
{
  g_clear_pointer (&self->sawn, bs_purchase_sawn_free);
}

static void
show_picture (BsPurchaseView *self, const BsPurchase *purchase)
{
  forget_picture (self);
  self->sawn = bs_purchase_sawn_new (purchase);
  resize_cb (GTK_DRAWING_AREA (self->picture), gtk_widget_get_width (self->picture), 0, self);
  gtk_widget_queue_draw (self->picture);
}

static void
bs_purchase_view_dispose (GObject *object)
{
  GtkWidget *child;

  forget_picture (BS_PURCHASE_VIEW (object));

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_purchase_view_parent_class)->dispose (object);
}

static void
bs_purchase_view_class_init (BsPurchaseViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_purchase_view_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
add_numbers (BsPurchaseView *self)
{
  self->flow = bs_blocks_new (3, 36, 12);
  for (guint i = 0; i < N_NUMBERS; i++)
    {
      GtkWidget *number = bs_number_row_new ();

      self->numbers[i] = BS_NUMBER_ROW (number);
      bs_blocks_append (BS_BLOCKS (self->flow), number);
    }
}

static void
bs_purchase_view_init (BsPurchaseView *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 12);
  add_numbers (self);
  self->list = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->list), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self->list), 18);
  self->picture = gtk_drawing_area_new ();
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->picture), draw_cb, self, NULL);
  g_signal_connect (self->picture, "resize", G_CALLBACK (resize_cb), self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The boards that are sawn, with the pieces cut from them"),
                                  -1);
  self->offcuts_heading = bs_page_text_new (_ ("Offcuts"), "strong");
  self->offcuts = bs_page_text_new (NULL, NULL);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
  gtk_widget_set_parent (self->flow, GTK_WIDGET (self));
  gtk_widget_set_parent (self->picture, GTK_WIDGET (self));
  gtk_widget_set_parent (self->offcuts_heading, GTK_WIDGET (self));
  gtk_widget_set_parent (self->offcuts, GTK_WIDGET (self));
}

GtkWidget *
bs_purchase_view_new (void)
{
  return g_object_new (BS_TYPE_PURCHASE_VIEW, NULL);
}

void
bs_purchase_view_show (BsPurchaseView *self, const BsPurchase *purchase)
{
  g_return_if_fail (BS_IS_PURCHASE_VIEW (self));

  gtk_widget_set_visible (GTK_WIDGET (self), purchase != NULL && purchase->cuts != NULL);
  if (purchase == NULL || purchase->cuts == NULL)
    return;
  show_list (self, purchase);
  show_numbers (self, purchase);
  show_picture (self, purchase);
  show_offcuts (self, purchase);
}
