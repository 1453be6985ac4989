/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-canvas-private.h"

#include <math.h>

#include "app/picture-node.h"
#include "words/sawing.h"

/* The boards on the canvas, a row each: where they are, and their pictures. */

/* Room between the boards, in heights of the text. */
#define TITLE_ROOM 1.8
#define ROW_GAP 1.0

void
bs_cutting_row_free (gpointer data)
{
  BsCuttingRow *row = data;

  g_clear_pointer (&row->node, gsk_render_node_unref);
  g_free (row->look);
  g_free (row);
}

static const BsCuttingRow *
find_row_of (BsCuttingCanvas *self, const char *board)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      const BsCuttingRow *row = self->rows->pdata[i];
      if (g_str_equal (row->sawn->board->id, board))
        return row;
    }
  return NULL;
}

graphene_rect_t
bs_cutting_canvas_get_rect (BsCuttingCanvas *self, const BsCut *cut)
{
  const BsCuttingRow *row = find_row_of (self, cut->board);
  double top = row != NULL ? row->top : 0.0;
  double width = row != NULL ? row->sawn->board->width : 0.0;

  return GRAPHENE_RECT_INIT ((float)(bs_cutting_canvas_get_left (self) + cut->x * self->per_mm),
                             (float)(top + (width - cut->y - cut->width) * self->per_mm),
                             (float)(cut->length * self->per_mm),
                             (float)(cut->width * self->per_mm));
}

const BsCuttingRow *
bs_cutting_canvas_find_row (BsCuttingCanvas *self, double y)
{
  const BsCuttingRow *found = NULL;
  double best = INFINITY;

  for (guint i = 0; i < self->rows->len; i++)
    {
      const BsCuttingRow *row = self->rows->pdata[i];
      double middle = row->top + 0.5 * row->sawn->board->width * self->per_mm;

      if (fabs (y - middle) >= best)
        continue;
      best = fabs (y - middle);
      found = row;
    }
  return found;
}

static double
find_longest (BsCuttingCanvas *self)
{
  double longest = 1.0;

  for (guint i = 0; i < self->plan->boards->len; i++)
    longest = fmax (longest, ((const BsBoard *)self->plan->boards->pdata[i])->length);
  return longest;
}

static double
find_per_mm (BsCuttingCanvas *self, int width)
{
  double room = width - bs_cutting_canvas_get_left (self) - self->text_size;

  return fmax (room, 1.0) / find_longest (self);
}

static double
measure_row (BsCuttingCanvas *self, const BsBoard *board, double per_mm)
{
  return ceil (TITLE_ROOM * self->text_size) + ceil (board->width * per_mm)
         + ceil (bs_cut_picture_margin (self->text_size)) + ceil (ROW_GAP * self->text_size);
}

void
bs_cutting_rows_place (BsCuttingCanvas *self)
{
  double top = ceil (0.5 * self->text_size);

  self->per_mm = find_per_mm (self, self->width);
  for (guint i = 0; i < self->rows->len; i++)
    {
      BsCuttingRow *row = self->rows->pdata[i];

      row->title_top = top;
      row->top = top + ceil (TITLE_ROOM * self->text_size);
      top += measure_row (self, row->sawn->board, self->per_mm);
    }
}

/* Pictures of boards that stay the same are kept. */
void
bs_cutting_rows_match (BsCuttingCanvas *self)
{
  guint n = self->rack->boards->len;

  while (self->rows->len < n)
    g_ptr_array_add (self->rows, g_new0 (BsCuttingRow, 1));
  g_ptr_array_set_size (self->rows, (int)n);
  for (guint i = 0; i < n; i++)
    ((BsCuttingRow *)self->rows->pdata[i])->sawn = self->rack->boards->pdata[i];
}

/* All that a board's picture depends on, in letters. */
static char *
describe_look (BsCuttingCanvas *self, const BsSawnBoard *sawn)
{
  GString *look = g_string_new (NULL);

  g_string_append_printf (look, "%p %p %.4f %.2f", (gconstpointer)sawn->board,
                          (gconstpointer)self->palette, self->per_mm, self->text_size);
  for (guint i = 0; i < sawn->cuts->len; i++)
    {
      guint index = g_array_index (sawn->cuts, guint, i);
      const BsCut *cut = &g_array_index (self->plan->cuts, BsCut, index);

      g_string_append_printf (look, "|%s %.2f %.2f %.2f %.2f %d%d%d%d", cut->piece, cut->x, cut->y,
                              cut->length, cut->width, cut->is_pinned, cut->is_cut,
                              (int)index == bs_cutting_canvas_get_selected (self),
                              self->hold.cut >= 0);
    }
  return g_string_free (look, FALSE);
}

typedef struct
{
  BsCuttingCanvas *canvas;
  const BsSawnBoard *sawn;
} Drawing;

static void
draw_board (cairo_t *cr, gpointer data)
{
  const Drawing *drawing = data;
  const BsCutStyle style = bs_cutting_canvas_get_style (drawing->canvas);

  bs_draw_cut_board (cr, drawing->canvas->plan, drawing->sawn, &style);
}

static void
update_node (BsCuttingCanvas *self, BsCuttingRow *row)
{
  g_autofree char *look = describe_look (self, row->sawn);
  double margin = bs_cutting_canvas_get_left (self);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (
      (float)-margin, (float)-ceil (self->text_size),
      (float)(margin + ceil (row->sawn->board->length * self->per_mm) + self->text_size),
      (float)(ceil (row->sawn->board->width * self->per_mm) + margin + ceil (self->text_size)));
  Drawing drawing = { self, row->sawn };

  if (row->node != NULL && g_strcmp0 (look, row->look) == 0)
    return;
  g_clear_pointer (&row->node, gsk_render_node_unref);
  g_free (row->look);
  row->look = g_steal_pointer (&look);
  row->node = bs_picture_node_new (&bounds, gtk_widget_get_scale_factor (GTK_WIDGET (self)),
                                   draw_board, &drawing);
}

static void
snapshot_title (BsCuttingCanvas *self, const BsCuttingRow *row, GtkSnapshot *snapshot)
{
  g_autofree char *words = bs_words_sawn_board (row->sawn, self->plan);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), words);
  const BsColor *ink
      = row->sawn->sawing->fault != BS_SAW_FAULT_NONE ? &self->palette->stop : &self->palette->ink;
  GdkRGBA color = { (float)ink->red, (float)ink->green, (float)ink->blue, (float)ink->alpha };
  double left = bs_cutting_canvas_get_left (self);

  pango_layout_set_width (layout, (int)(self->width - left) * PANGO_SCALE);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)left, (float)row->title_top));
  gtk_snapshot_append_layout (snapshot, layout, &color);
  gtk_snapshot_restore (snapshot);
}

void
bs_cutting_canvas_get_view (BsCuttingCanvas *self, double *from, double *page)
{
  graphene_point_t top = GRAPHENE_POINT_INIT (0.0f, 0.0f);

  if (!gtk_widget_compute_point (GTK_WIDGET (self), gtk_widget_get_parent (GTK_WIDGET (self)), &top,
                                 &top))
    top.y = 0.0f;
  *from = gtk_adjustment_get_value (self->vertical) - (double)top.y;
  *page = gtk_adjustment_get_page_size (self->vertical);
}

static gboolean
is_in_view (BsCuttingCanvas *self, const BsCuttingRow *row)
{
  double from, page;

  if (self->vertical == NULL)
    return TRUE;
  bs_cutting_canvas_get_view (self, &from, &page);
  return row->title_top < from + page
         && row->title_top + measure_row (self, row->sawn->board, self->per_mm) > from;
}

static void
snapshot_row (BsCuttingCanvas *self, BsCuttingRow *row, GtkSnapshot *snapshot)
{
  snapshot_title (self, row, snapshot);
  update_node (self, row);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT ((float)bs_cutting_canvas_get_left (self), (float)row->top));
  gtk_snapshot_append_node (snapshot, row->node);
  gtk_snapshot_restore (snapshot);
}

void
bs_cutting_rows_snapshot (BsCuttingCanvas *self, GtkSnapshot *snapshot)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (is_in_view (self, self->rows->pdata[i]))
      snapshot_row (self, self->rows->pdata[i], snapshot);
}

double
bs_cutting_rows_measure (BsCuttingCanvas *self, int width)
{
  double height = self->text_size;

  for (guint i = 0; i < self->plan->boards->len; i++)
    height += measure_row (self, self->plan->boards->pdata[i], find_per_mm (self, width));
  return height;
}
