/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/flow.h"

#include <math.h>
#include <string.h>

#include "draw/lettering.h"
#include "draw/marks.h"
#include "draw/palette.h"

/* In heights of the text. */
#define GUTTER 2.4
#define HEADING_SIZE 1.3
#define HEADING_SPACE 1.6
#define ROW_SPACE 0.32
#define SIGN_ROOM 1.7
#define CELL_GAP 0.5

/* A table does not begin with its head and fewer than so many rows at the foot of a column. */
#define KEPT_ROWS 3

typedef struct
{
  char *texts[BS_FLOW_MAX_CELLS];
  cairo_surface_t *picture; /* in place of texts; or NULL */
  BsFlowCell cells[BS_FLOW_MAX_CELLS];
  guint n_cells;
  double size;
  double height;
  double space;      /* above it, but for the head of a column */
  gboolean is_ruled; /* a fine line under it */
  gboolean stays_with_next;
  BsFlowSign sign;
  int head; /* row that is repeated above it in a new column, -1: none */
} Row;

typedef struct
{
  guint row, page, column;
  double y;
} Spot;

struct _BsFlow
{
  double width, height, column_width, text_size;
  guint n_columns;
  cairo_t *cr;                         /* for measuring */
  GArray *rows;                        /* Row */
  BsFlowCell cells[BS_FLOW_MAX_CELLS]; /* of the table that is being added */
  guint n_cells, n_rows;
  int head;
  double more_space;
  GArray *spots; /* Spot; made when first asked for */
};

static void
clear_row (gpointer data)
{
  Row *row = data;

  for (guint i = 0; i < row->n_cells; i++)
    g_free (row->texts[i]);
  g_clear_pointer (&row->picture, cairo_surface_destroy);
}

BsFlow *
bs_flow_new (double width, double height, guint n_columns, double text_size)
{
  BsFlow *self = g_new0 (BsFlow, 1);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, NULL);

  self->width = width;
  self->height = height;
  self->n_columns = n_columns;
  self->text_size = text_size;
  self->column_width = (width - (n_columns - 1) * GUTTER * text_size) / n_columns;
  self->cr = cairo_create (surface);
  cairo_surface_destroy (surface);
  self->rows = g_array_new (FALSE, TRUE, sizeof (Row));
  g_array_set_clear_func (self->rows, clear_row);
  self->head = -1;
  return self;
}

void
bs_flow_free (BsFlow *self)
{
  cairo_destroy (self->cr);
  g_array_unref (self->rows);
  g_clear_pointer (&self->spots, g_array_unref);
  g_free (self);
}

static double
find_indent (const BsFlow *self, const Row *row)
{
  return row->sign != BS_FLOW_SIGN_NONE ? SIGN_ROOM * self->text_size : 0.0;
}

static BsLettering
get_style (const BsFlow *self, const Row *row, guint cell)
{
  double room = self->column_width - find_indent (self, row);
  double gap = row->n_cells > 1 ? CELL_GAP * self->text_size : 0.0;

  return (BsLettering){
    .size = row->size,
    .is_bold = row->cells[cell].is_bold,
    .wrap = row->cells[cell].width * room - gap,
    .align = row->cells[cell].is_right ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT,
  };
}

static void
measure_row (BsFlow *self, Row *row)
{
  for (guint i = 0; i < row->n_cells; i++)
    {
      BsLettering style = get_style (self, row, i);
      double width, height;

      bs_lettering_measure (self->cr, row->texts[i], &style, &width, &height);
      row->height = MAX (row->height, height);
    }
}

static void
append (BsFlow *self, Row *row)
{
  measure_row (self, row);
  row->space += self->more_space;
  self->more_space = 0.0;
  g_array_append_vals (self->rows, row, 1);
  g_clear_pointer (&self->spots, g_array_unref);
}

void
bs_flow_add_heading (BsFlow *self, const char *text)
{
  Row row = {
    .texts = { g_strdup (text) },
    .cells = { { .width = 1.0, .is_bold = TRUE } },
    .n_cells = 1,
    .size = HEADING_SIZE * self->text_size,
    .space = HEADING_SPACE * self->text_size,
    .stays_with_next = TRUE,
    .head = -1,
  };

  self->head = -1;
  append (self, &row);
}

/* The longest beginning of a paragraph, in whole lines, that is no higher than a column; the whole
 * of it mostly. */
static gsize
find_break (BsFlow *self, const Row *row, const char *text)
{
  BsLettering style = get_style (self, row, 0);
  g_autoptr (PangoLayout) layout = bs_lettering_layout (self->cr, text, &style);
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  gsize end = strlen (text);

  do
    {
      PangoRectangle line;

      pango_layout_iter_get_line_extents (iter, NULL, &line);
      if (line.y + line.height > self->height * PANGO_SCALE)
        {
          end = (gsize)pango_layout_iter_get_index (iter);
          break;
        }
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
  return end;
}

void
bs_flow_add_text (BsFlow *self, const char *text, BsFlowStyle style, BsFlowSign sign)
{
  self->head = -1;
  do
    {
      Row row = {
        .cells = { { .width = 1.0, .is_bold = style == BS_FLOW_TITLE } },
        .n_cells = 1,
        .size = self->text_size,
        .space = ROW_SPACE * self->text_size,
        .stays_with_next = style != BS_FLOW_PLAIN,
        .sign = sign,
        .head = -1,
      };
      gsize end = find_break (self, &row, text);

      row.texts[0] = g_strndup (text, end);
      append (self, &row);
      text += end;
    }
  while (*text != '\0');
}

void
bs_flow_add_picture (BsFlow *self, cairo_surface_t *picture, double height)
{
  Row row = {
    .picture = cairo_surface_reference (picture),
    .height = height,
    .space = self->text_size,
    .head = -1,
  };

  self->head = -1;
  append (self, &row);
}

double
bs_flow_get_column_width (const BsFlow *self)
{
  return self->column_width;
}

static void
append_cells (BsFlow *self, const char *const *texts, gboolean is_head)
{
  Row row = {
    .n_cells = self->n_cells,
    .size = is_head ? 0.9 * self->text_size : self->text_size,
    .space = ROW_SPACE * self->text_size,
    .is_ruled = is_head,
    .stays_with_next = self->n_rows < KEPT_ROWS,
    .head = self->head,
  };

  for (guint i = 0; i < self->n_cells; i++)
    {
      row.texts[i] = g_strdup (texts[i]);
      row.cells[i] = self->cells[i];
      row.cells[i].is_bold = row.cells[i].is_bold && !is_head;
    }
  self->n_rows++;
  append (self, &row);
}

void
bs_flow_begin_table (BsFlow *self, const BsFlowCell *cells, guint n_cells, const char *const *head)
{
  g_return_if_fail (n_cells <= BS_FLOW_MAX_CELLS);

  memcpy (self->cells, cells, n_cells * sizeof *cells);
  self->n_cells = n_cells;
  self->head = -1;
  self->n_rows = 0;
  append_cells (self, head, TRUE);
  self->head = (int)self->rows->len - 1;
}

void
bs_flow_add_row (BsFlow *self, const char *const *texts)
{
  g_return_if_fail (self->head >= 0);

  append_cells (self, texts, FALSE);
}

void
bs_flow_add_space (BsFlow *self)
{
  self->more_space = 0.6 * self->text_size;
}

/* Height of a row and of those that it must not be parted from. */
static double
find_block_height (const BsFlow *self, guint first)
{
  double height = 0.0;

  for (guint i = first; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);

      height += row->height + (i > first ? row->space : 0.0);
      if (!row->stays_with_next)
        break;
    }
  return height;
}

static void
put (BsFlow *self, guint row, Spot *pen)
{
  pen->row = row;
  g_array_append_vals (self->spots, pen, 1);
  pen->y += g_array_index (self->rows, Row, row).height;
}

/* Puts every row in its place. */
static void
lay_out (BsFlow *self)
{
  Spot pen = { 0 };

  self->spots = g_array_new (FALSE, FALSE, sizeof (Spot));
  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);
      double space = pen.y > 0.0 ? row->space : 0.0;

      if (pen.y > 0.0 && pen.y + space + find_block_height (self, i) > self->height)
        {
          pen.column = (pen.column + 1) % self->n_columns;
          pen.page += pen.column == 0 ? 1 : 0;
          pen.y = space = 0.0;
          if (row->head >= 0)
            {
              put (self, (guint)row->head, &pen);
              space = row->space;
            }
        }
      pen.y += space;
      put (self, i, &pen);
    }
}

/* Laid out anew only after something was added. */
static const GArray *
get_spots (BsFlow *self)
{
  if (self->spots == NULL)
    lay_out (self);
  return self->spots;
}

guint
bs_flow_get_n_pages (BsFlow *self)
{
  const GArray *spots = get_spots (self);

  return spots->len > 0 ? g_array_index (spots, Spot, spots->len - 1).page + 1 : 0;
}

static void
draw_row (const BsFlow *self, const Row *row, cairo_t *cr)
{
  const BsPalette *paper = bs_palette_paper ();
  double indent = find_indent (self, row), room = self->column_width - indent;

  if (row->sign == BS_FLOW_SIGN_CAUTION || row->sign == BS_FLOW_SIGN_STOP)
    bs_mark_finding (cr, 0.66 * self->text_size, 0.65 * self->text_size, 1.1 * self->text_size,
                     row->sign == BS_FLOW_SIGN_STOP ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION,
                     &paper->ink, &paper->ground);
  if (row->picture != NULL)
    {
      cairo_set_source_surface (cr, row->picture, 0.0, 0.0);
      cairo_paint (cr);
    }
  bs_color_set (&paper->ink, cr);
  for (guint i = 0; i < row->n_cells; i++)
    {
      BsLettering style = get_style (self, row, i);

      bs_lettering_draw (cr, row->texts[i], &style, indent + row->cells[i].from * room, 0.0, 0.0,
                         0.0);
    }
  if (row->is_ruled)
    {
      cairo_set_line_width (cr, 0.5);
      cairo_move_to (cr, 0.0, row->height + 1.0);
      cairo_line_to (cr, self->column_width, row->height + 1.0);
      cairo_stroke (cr);
    }
}

void
bs_flow_draw_page (BsFlow *self, guint page, cairo_t *cr)
{
  const GArray *spots = get_spots (self);

  for (guint i = 0; i < spots->len; i++)
    {
      const Spot *spot = &g_array_index (spots, Spot, i);

      if (spot->page != page)
        continue;
      cairo_save (cr);
      cairo_translate (cr, spot->column * (self->column_width + GUTTER * self->text_size), spot->y);
      draw_row (self, &g_array_index (self->rows, Row, spot->row), cr);
      cairo_restore (cr);
    }
}
