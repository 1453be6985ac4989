/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-layout.h"

#include <math.h>

#define SPACE 6.0
#define RACK_SHARE 0.11 /* of the view: the tallest end in the tray, */
#define RACK_LEAST 30.0 /* between these heights */
#define RACK_MOST 54.0
#define RACK_CAPTION 24.0 /* the word above them */
#define RACK_MARGIN (2.0 * SPACE)
#define LEAST_WIDTH 360
#define LEAST_HEIGHT 300

/* At its own scale, so that the tray stays shallow whatever the slab's size. */
static double
rack_scale (const BsStack *rack, double end)
{
  return rack->height > 0.0 ? fmin (end / rack->height, 1.0) : 1.0;
}

/* Walks along the tray's lines up to lamination number `index`; returns the line it stands in and
 * sets its place along that line. */
static guint
walk_rack (const BsGlueUpLayout *self, const BsStack *rack, guint index, double *x)
{
  double right = self->rack.left + self->view_width - 2.0 * RACK_MARGIN;
  guint line = 0;

  *x = self->rack.left;
  for (guint i = 0; i < index && i < rack->n; i++)
    {
      double next = i + 1 < rack->n ? rack->placed[i + 1].thickness : 0.0;

      *x += rack->placed[i].thickness * self->rack.per_mm_across + SPACE;
      if (*x + next * self->rack.per_mm_across > right)
        {
          *x = self->rack.left;
          line++;
        }
    }
  return line;
}

/* How much taller the pictures' area must be so that the section can grow with the width: its
 * height is a part of the area's. */
static double
stretch (const BsStack *slab, double width, double height, double zoom, double text_size)
{
  BsScale section, face;

  bs_scale_fit (&section, &face, slab, width, height, text_size, 1.0);
  double wished = section.per_mm_across * zoom;
  bs_scale_fit (&section, &face, slab, width * zoom, height, text_size, 1.0);
  return section.per_mm_across < 0.98 * wished ? zoom : 1.0;
}

void
bs_glue_up_layout_init (BsGlueUpLayout *self, const BsStack *slab, const BsStack *rack,
                        double view_width, double view_height, double zoom, double text_size)
{
  double end = round (CLAMP (view_height * RACK_SHARE, RACK_LEAST, RACK_MOST));

  *self = (BsGlueUpLayout){
    .rack = { .left = RACK_MARGIN,
              .per_mm_across = rack_scale (rack, end),
              .hairline = 1.0,
              .text_size = text_size },
    .rack_line = end + 2.0 * SPACE,
    .view_width = view_width,
    .width = view_width * zoom,
  };

  double x;
  guint lines = walk_rack (self, rack, rack->n > 0 ? rack->n - 1 : 0, &x) + 1;
  double tray = RACK_CAPTION + lines * self->rack_line;
  double pictures = fmax (view_height, LEAST_HEIGHT) - tray;

  pictures *= stretch (slab, view_width, pictures, zoom, text_size);
  bs_scale_fit (&self->section, &self->face, slab, self->width, pictures, text_size, 1.0);
  self->section.left = round (self->section.left);
  self->face.left = self->section.left;
  self->section.top = round (self->section.top);
  self->face.top = round (self->face.top);
  self->rack_top = round (pictures);
  self->rack.top = self->rack_top + RACK_CAPTION + SPACE;
  self->height = self->rack_top + tray;
}

void
bs_glue_up_layout_show_rack (BsGlueUpLayout *self, double view_left)
{
  self->rack.left = RACK_MARGIN + view_left;
}

void
bs_glue_up_layout_least (int *width, int *height)
{
  *width = LEAST_WIDTH;
  *height = LEAST_HEIGHT;
}

graphene_rect_t
bs_glue_up_layout_column (const BsGlueUpLayout *self, const BsStack *slab, guint place)
{
  const BsPlaced *placed = &slab->placed[place];
  double left = bs_scale_from_y (&self->section, placed->y);
  double bottom = bs_scale_from_x (&self->face, slab->length);

  return GRAPHENE_RECT_INIT ((float)left, (float)self->section.top,
                             (float)(placed->thickness * self->section.per_mm_across),
                             (float)(bottom - self->section.top));
}

graphene_rect_t
bs_glue_up_layout_seat (const BsGlueUpLayout *self, const BsStack *rack, guint index)
{
  const BsPlaced *placed = &rack->placed[index];
  double x;
  guint line = walk_rack (self, rack, index, &x);

  return GRAPHENE_RECT_INIT ((float)x, (float)(self->rack.top + line * self->rack_line),
                             (float)(placed->thickness * self->rack.per_mm_across),
                             (float)(self->rack_line - 2.0 * SPACE));
}

gboolean
bs_glue_up_layout_is_in_rack (const BsGlueUpLayout *self, double y)
{
  return y >= self->rack_top;
}

BsStack *
bs_glue_up_rack_new (const BsPlan *plan)
{
  g_autoptr (BsPlan) rack = bs_plan_copy (plan);

  g_array_set_size (rack->order, 0);
  for (guint i = 0; i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (plan->laminations, i);

      if (bs_plan_find_place (plan, lamination->id) >= 0)
        continue;
      BsPlacement placement = { .lamination = g_ref_string_acquire (lamination->id) };
      g_array_append_val (rack->order, placement);
    }
  return bs_stack_new (rack);
}
