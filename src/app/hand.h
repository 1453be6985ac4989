/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The hand that carries something over a canvas: pressed on it, it is chosen; moved beyond the
 * least way, it is taken up and follows; let go, it is put down. Where the hand comes back to where
 * it took hold, at Escape, and when the gesture breaks off, it is put back. No other key does
 * anything meanwhile: nothing else changes the plan under the hand. Places are in the canvas's
 * pixels. */
typedef struct
{
  double least; /* a shorter way was a click; 0: what GTK takes for one */
  /* Chooses what is there and gives it the focus; FALSE: there is nothing to carry. */
  gboolean (*press) (gpointer canvas, double x, double y);
  /* Takes up what was pressed there; FALSE: not now. */
  gboolean (*take) (gpointer canvas, double x, double y);
  /* It is at the hand's pointer now. */
  void (*carry) (gpointer canvas);
  /* Both end with bs_hand_let_go (), at once or when it is known what comes of it. */
  void (*drop) (gpointer canvas);
  void (*put_back) (gpointer canvas);
} BsHandKind;

/* A part of its canvas. */
typedef struct
{
  GtkWidget *canvas;
  const BsHandKind *kind;
  GtkGesture *drag; /* borrowed */
  gboolean is_full;
  graphene_point_t pointer;
} BsHand;

/* `kind` lives as long as the program. */
void bs_hand_init (BsHand *self, GtkWidget *canvas, const BsHandKind *kind);

/* Something is held without the pointer: the keys wait, until it is let go. */
void bs_hand_hold (BsHand *self);

/* It is empty again. */
void bs_hand_let_go (BsHand *self);

/* Puts back what it holds, if it does. */
void bs_hand_put_back (BsHand *self);

/* Which way to scroll a view, -1, 0 or 1, when the pointer is so far from the beginning of what is
 * seen of it; `zone`: how near the edge it begins. */
int bs_hand_find_scroll (double in_view, double page, double zone);

G_END_DECLS
