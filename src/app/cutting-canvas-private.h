/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/cutting-canvas.h"
#include "app/hand.h"
#include "core/sawing-rack.h"
#include "draw/cutting.h"

G_BEGIN_DECLS

/* One board and where it is; its picture is kept for as long as it looks the same. */
typedef struct
{
  const BsSawnBoard *sawn; /* borrowed from the rack */
  double title_top, top;   /* of its words, and of its back edge */
  char *look;              /* what the picture shows, in letters */
  GskRenderNode *node;
} BsCuttingRow;

/* Where a piece would be put down. */
typedef struct
{
  char *board; /* id; NULL: nowhere */
  double x, y;
} BsCuttingTarget;

/* What is carried. */
typedef struct
{
  int cut;      /* in `plan`; -1: nothing is held */
  BsPlan *plan; /* as it was when it was picked up */
  graphene_point_t grip;
  BsCuttingTarget target;
  GCancellable *planning; /* of the thread that plans the others anew, or NULL */
  gboolean is_dropped;    /* let go, while that thread works */
  gboolean is_possible;   /* the session shows what putting it down here gives */
} BsCuttingHold;

struct _BsCuttingCanvas
{
  GtkWidget parent_instance;

  /* owned */
  BsSession *session;
  BsPlan *plan; /* shown: the preview's while a piece is held */
  BsSawRack *rack;
  GPtrArray *rows;   /* BsCuttingRow: the plan's boards */
  GPtrArray *pieces; /* children, one for each cut of the plan, in its order */
  GtkAdjustment *vertical;
  char *message;
  char *selected; /* id of a piece, or NULL */
  guint selected_copy;
  /* state */
  double per_mm, text_size;
  const BsPalette *palette;
  int width;
  BsHand hand;
  BsCuttingHold hold;
};

/* cutting-canvas.c */
void bs_cutting_canvas_tell (BsCuttingCanvas *self, const char *message);
double bs_cutting_canvas_get_left (BsCuttingCanvas *self);
BsCutStyle bs_cutting_canvas_get_style (BsCuttingCanvas *self);

/* cutting-rows.c */
void bs_cutting_row_free (gpointer row);
void bs_cutting_rows_match (BsCuttingCanvas *self); /* one for each board of the rack */
double bs_cutting_rows_measure (BsCuttingCanvas *self, int width);
void bs_cutting_rows_place (BsCuttingCanvas *self);
void bs_cutting_rows_snapshot (BsCuttingCanvas *self, GtkSnapshot *snapshot);
graphene_rect_t bs_cutting_canvas_get_rect (BsCuttingCanvas *self, const BsCut *cut);
/* The board nearest to a place; NULL when there are none. */
const BsCuttingRow *bs_cutting_canvas_find_row (BsCuttingCanvas *self, double y);
/* What of the canvas can be seen. */
void bs_cutting_canvas_get_view (BsCuttingCanvas *self, double *from, double *page);

/* cutting-hold.c */
extern const BsHandKind bs_cutting_hand;
/* Puts a piece of the present plan down somewhere at once, as if it had been dragged there. */
void bs_cutting_hold_put (BsCuttingCanvas *self, int cut, const char *board, double x, double y);
/* Draws what is held, over everything. */
void bs_cutting_hold_snapshot (BsCuttingCanvas *self, GtkSnapshot *snapshot);

G_END_DECLS
