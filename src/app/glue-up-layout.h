/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <graphene.h>

#include "draw/scale.h"

G_BEGIN_DECLS

/* Where everything on the glue-up canvas stands: the section, the face under it and the rack under
 * both. Pictures, widgets and pointer all ask here. Device units are the canvas's pixels. */
typedef struct
{
  BsScale section, face;
  BsScale rack;     /* of the ends in the rack; left and top are those of the tray's contents */
  double rack_top;  /* upper edge of the tray */
  double rack_line; /* from one line of ends in the tray to the next */
  double view_width;
  double width, height;
} BsGlueUpLayout;

/* What the plan leaves in the rack, as a stack of its own. */
BsStack *bs_glue_up_rack_new (const BsPlan *plan);

/* `rack` is what stands in the rack, as a stack of its own. The view is what can be seen at once;
 * with `zoom` 1 everything fits in it, with more the pictures are that many times as large and the
 * layout's size tells how large they became. */
void bs_glue_up_layout_init (BsGlueUpLayout *self, const BsStack *slab, const BsStack *rack,
                             double view_width, double view_height, double zoom, double text_size);

/* The rack stands in the part of the layout that is in view, from this x on. */
void bs_glue_up_layout_show_rack (BsGlueUpLayout *self, double view_left);

/* The least view that leaves every part readable. */
void bs_glue_up_layout_least (int *width, int *height);

/* The column that a lamination of the slab takes up, from the top of the section to the end of the
 * face. */
graphene_rect_t bs_glue_up_layout_column (const BsGlueUpLayout *self, const BsStack *slab,
                                          guint place);

/* The box of the rack's lamination number `index`. */
graphene_rect_t bs_glue_up_layout_seat (const BsGlueUpLayout *self, const BsStack *rack,
                                        guint index);

gboolean bs_glue_up_layout_is_in_rack (const BsGlueUpLayout *self, double y);

G_END_DECLS
