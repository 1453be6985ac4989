/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/glue-up-canvas.h"
#include "app/glue-up-layout.h"
#include "app/hand.h"
#include "app/lamination-strip.h"

G_BEGIN_DECLS

/* One lamination's widget and where it is: on its way from `from` to `goal`. */
typedef struct
{
  BsLaminationStrip *strip; /* a child of the canvas */
  char *id;
  gboolean is_in_rack;
  guint place;        /* in the slab, or in the rack */
  gboolean is_placed; /* has been given a goal */
  gboolean is_wanted; /* used while matching with the plan */
  graphene_rect_t from, now, goal;
  graphene_point_t allocated; /* where GTK thinks that the strip is: at its goal, sooner or later */
} BsSeat;

/* What is carried, and where it would be put down. */
typedef struct
{
  BsSeat *seat;          /* NULL: nothing is held */
  BsPlan *plan;          /* as it was when it was picked up */
  BsStack *rest;         /* the slab without it */
  graphene_point_t grip; /* of the pointer on it, as parts of its size */
  int target;            /* gap in the rest of the slab, or -1: the rack */
} BsHold;

struct _BsGlueUpCanvas
{
  GtkWidget parent_instance;

  /* owned */
  BsSession *session;
  BsStack *rack;    /* what stands in the rack, as a stack of its own */
  GPtrArray *seats; /* BsSeat: front to back, then the rack */
  GtkAdjustment *horizontal, *vertical;
  GMenuModel *menu_model;
  GtkWidget *menu;             /* made of it when it is first opened */
  GskRenderNode *under, *over; /* what is drawn below and above the laminations */
  GBytes *tape;                /* the clamps' positions that `under` was drawn for */
  /* state */
  BsGlueUpLayout layout;
  int layout_width, layout_height; /* that the layout was made for */
  gboolean is_stale;               /* the plan is another since the layout was made */
  double zoom;
  double text_size;
  const BsPalette *palette;
  guint tick;
  gint64 slide_start; /* frame time, µs; 0: nothing slides */
  gboolean is_drawn;  /* every picture is as it should be; these two, and those of the strips */
  gboolean is_under_drawn, is_over_drawn;
  BsHand hand;
  BsHold hold;
};

/* The slab as shown: the preview's while one is held. */
const BsStack *bs_glue_up_canvas_get_slab (BsGlueUpCanvas *self);

/* Something was put elsewhere: lay out again. */
void bs_glue_up_canvas_invalidate (BsGlueUpCanvas *self);

/* Pictures are drawn at the next frames. */
void bs_glue_up_canvas_draw_soon (BsGlueUpCanvas *self);

/* glue-up-scenery.c */
void bs_glue_up_scenery_forget (BsGlueUpCanvas *self); /* the layout or the colours are others */
void bs_glue_up_scenery_update (BsGlueUpCanvas *self); /* the results are others */
void bs_glue_up_scenery_draw (BsGlueUpCanvas *self);

/* glue-up-seats.c */
void bs_glue_up_seat_free (gpointer seat);
/* One seat for each lamination of the plan shown. */
void bs_glue_up_seats_match (BsGlueUpCanvas *self);
/* Tells every widget what it looks like. */
void bs_glue_up_seats_show (BsGlueUpCanvas *self);
/* Everything goes where it belongs, sliding unless at once. */
void bs_glue_up_seats_place (BsGlueUpCanvas *self, gboolean is_at_once);
/* The tick callback runs while something slides, is held, or is not drawn yet. */
void bs_glue_up_seats_start_tick (BsGlueUpCanvas *self);
/* NULL when there is none. */
BsSeat *bs_glue_up_seats_find_at (BsGlueUpCanvas *self, double x, double y);
BsSeat *bs_glue_up_seats_get_selected (BsGlueUpCanvas *self);
BsSeat *bs_glue_up_seats_get_focused (BsGlueUpCanvas *self);
/* Left and right along the slab or the rack, down to the rack and up from it; `from` at the ends.
 */
BsSeat *bs_glue_up_seats_find_next (BsGlueUpCanvas *self, BsSeat *from, GtkDirectionType direction);

/* glue-up-hold.c */
extern const BsHandKind bs_glue_up_hand;
/* At each frame: follows the pointer when the view scrolls under it. */
void bs_glue_up_hold_tick (BsGlueUpCanvas *self);
/* Where the held one is drawn. */
graphene_rect_t bs_glue_up_hold_place (BsGlueUpCanvas *self);

G_END_DECLS
