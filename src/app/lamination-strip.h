/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/picture.h"

G_BEGIN_DECLS

/* One lamination on the glue-up canvas: its end in the section and its side in the show face, or in
 * the rack its end alone. Draws each picture once and keeps it for as long as it looks the same. */
#define BS_TYPE_LAMINATION_STRIP (bs_lamination_strip_get_type ())
G_DECLARE_FINAL_TYPE (BsLaminationStrip, bs_lamination_strip, BS, LAMINATION_STRIP, GtkWidget)

/* What it looks like. The scales' left and top are not used. */
typedef struct
{
  BsPlaced placed;
  BsFacePhoto photo;     /* of the show face */
  BsScale section, face; /* in the rack, section is the rack's scale */
  gboolean is_in_rack;
  BsMark marks;
  const BsPalette *palette;
} BsStripLook;

GtkWidget *bs_lamination_strip_new (void);

/* `plan` owns what the look points to. `end_bottom` and `face_top` say where, from the top of the
 * widget, the section's lower edge and the lamination's left end are. */
void bs_lamination_strip_show (BsLaminationStrip *self, BsPlan *plan, const BsStripLook *look,
                               double end_bottom, double face_top);

/* Draws its pictures anew if they no longer show the look, and says whether it did. Until then the
 * old ones, or the bare wood, stand in. */
gboolean bs_lamination_strip_draw (BsLaminationStrip *self);

/* What is read out. */
void bs_lamination_strip_describe (BsLaminationStrip *self, const char *text, gboolean is_selected);

G_END_DECLS
