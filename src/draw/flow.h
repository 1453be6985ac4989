/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

/* Headings, tables and paragraphs that run down columns, from page to page. Everything is measured
 * when it is added; nothing is cut off: what is too long wraps, and what is too high goes on in the
 * next column. Sizes in points; black on white. */
typedef struct _BsFlow BsFlow;

/* A sign in front of a row; BLANK leaves the room for one. */
typedef enum
{
  BS_FLOW_SIGN_NONE,
  BS_FLOW_SIGN_BLANK,
  BS_FLOW_SIGN_CAUTION,
  BS_FLOW_SIGN_STOP,
} BsFlowSign;

typedef enum
{
  BS_FLOW_PLAIN,
  BS_FLOW_KEPT,  /* in one column with the beginning of what follows */
  BS_FLOW_TITLE, /* bold, and kept likewise */
} BsFlowStyle;

/* One column of a table, as parts of the flow column's width. */
typedef struct
{
  double from, width;
  gboolean is_right; /* flush right: numbers */
  gboolean is_bold;
} BsFlowCell;

#define BS_FLOW_MAX_CELLS 12

/* Pages of n_columns columns in an area of width and height. */
BsFlow *bs_flow_new (double width, double height, guint n_columns, double text_size);
void bs_flow_free (BsFlow *self);

/* Starts a subject; never stands alone at the foot of a column. */
void bs_flow_add_heading (BsFlow *self, const char *text);

void bs_flow_add_text (BsFlow *self, const char *text, BsFlowStyle style, BsFlowSign sign);

/* A recorded picture as it is, with its top left corner at the column's; it should be no wider, nor
 * higher than a page. Keeps a reference. */
void bs_flow_add_picture (BsFlow *self, cairo_surface_t *picture, double height);

double bs_flow_get_column_width (const BsFlow *self);

/* A table: its head, which is repeated where the table goes on in another column, and its rows. The
 * cells stay the caller's and must live until the last row is added. */
void bs_flow_begin_table (BsFlow *self, const BsFlowCell *cells, guint n_cells,
                          const char *const *head);
void bs_flow_add_row (BsFlow *self, const char *const *texts);

/* A little room between what belongs together and what follows. */
void bs_flow_add_space (BsFlow *self);

guint bs_flow_get_n_pages (BsFlow *self);

/* With the area's top left corner at the origin. */
void bs_flow_draw_page (BsFlow *self, guint page, cairo_t *cr);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsFlow, bs_flow_free)

G_END_DECLS
