/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-canvas-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/picture-node.h"
#include "core/clamp-layout.h"
#include "draw/lettering.h"

/* What stands around the laminations: the tape with the clamps and the words beside the face, the
 * rack's tray, and over the section its finished faces and dimensions. */

void
bs_glue_up_scenery_forget (BsGlueUpCanvas *self)
{
  self->is_under_drawn = self->is_over_drawn = FALSE;
  bs_glue_up_canvas_draw_soon (self);
}

/* With the results the section's finished faces always change, the clamps mostly not. */
void
bs_glue_up_scenery_update (BsGlueUpCanvas *self)
{
  const GArray *clamps = bs_session_get_results (self->session)->set_clamps;
  g_autoptr (GBytes) tape = g_bytes_new (clamps->data, clamps->len * sizeof (BsLayoutClamp));

  self->is_over_drawn = FALSE;
  if (self->tape == NULL || !g_bytes_equal (tape, self->tape)
      || !bs_session_has_preview (self->session))
    self->is_under_drawn = FALSE;
  g_clear_pointer (&self->tape, g_bytes_unref);
  self->tape = g_steal_pointer (&tape);
  bs_glue_up_canvas_draw_soon (self);
}

static void
draw_tray (BsGlueUpCanvas *self, cairo_t *cr)
{
  const BsLettering style = { .size = self->text_size };
  const char *text
      = self->rack->n > 0 ? _ ("Rack") : _ ("Rack: carry a lamination here to set it aside");

  bs_color_set (&self->palette->faint, cr);
  bs_lettering_draw (cr, text, &style, self->layout.rack.left, self->layout.rack_top + 6.0, 0.0,
                     0.0);
  bs_color_set_faded (&self->palette->ink, cr, 0.15);
  cairo_rectangle (cr, 0.0, self->layout.rack_top, self->layout.width, 1.0);
  cairo_fill (cr);
}

/* Where the slab would be: what to do while there is none. */
static void
draw_invitation (BsGlueUpCanvas *self, cairo_t *cr)
{
  const BsLettering style = { .size = self->text_size };
  const char *text = self->rack->n > 0
                         ? _ ("Carry laminations here from the rack.")
                         : _ ("No laminations yet: add them at the place “Laminations”.");

  bs_color_set (&self->palette->faint, cr);
  bs_lettering_draw (cr, text, &style, self->layout.width / 2.0, self->layout.rack_top / 2.0, 0.5,
                     0.5);
}

static void
draw_under (cairo_t *cr, gpointer data)
{
  BsGlueUpCanvas *self = data;
  const BsResults *results = bs_session_get_results (self->session);

  if (results->stack->n == 0)
    draw_invitation (self, cr);

  bs_draw_tape (cr, results, &self->layout.face, self->palette);
  bs_draw_surroundings (cr, results, &self->layout.face, self->palette);
  draw_tray (self, cr);
}

static void
draw_over (cairo_t *cr, gpointer data)
{
  BsGlueUpCanvas *self = data;
  const BsResults *results = bs_session_get_results (self->session);

  bs_draw_finished_faces (cr, results, &self->layout.section, self->palette);
  bs_draw_dimensions (cr, results, &self->layout.section, self->palette);
}

static GskRenderNode *
draw_node (BsGlueUpCanvas *self, BsPictureFunc draw, double x, double y, double right,
           double bottom)
{
  double left = floor (x), top = floor (y);

  return bs_picture_node_new (&GRAPHENE_RECT_INIT ((float)left, (float)top,
                                                   (float)fmax (1.0, ceil (right) - left),
                                                   (float)fmax (1.0, ceil (bottom) - top)),
                              gtk_widget_get_scale_factor (GTK_WIDGET (self)), draw, self);
}

/* Around the face and not behind it, where it would be painted at each frame for nothing. */
static GskRenderNode *
draw_around_face (BsGlueUpCanvas *self)
{
  const BsGlueUpLayout *layout = &self->layout;
  const BsStack *slab = bs_glue_up_canvas_get_slab (self);
  double above = layout->face.top - 2.0 * self->text_size;
  double left = bs_scale_from_y (&layout->face, 0.0);
  double right = bs_scale_from_y (&layout->face, slab->width);
  double below = bs_scale_from_x (&layout->face, slab->length);
  GskRenderNode *parts[] = {
    draw_node (self, draw_under, 0.0, above, layout->width, layout->face.top),
    draw_node (self, draw_under, 0.0, layout->face.top, left, below),
    draw_node (self, draw_under, right, layout->face.top, layout->width, below),
    draw_node (self, draw_under, 0.0, below, layout->width, layout->rack.top),
  };
  GskRenderNode *node = gsk_container_node_new (parts, G_N_ELEMENTS (parts));

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    gsk_render_node_unref (parts[i]);
  return node;
}

void
bs_glue_up_scenery_draw (BsGlueUpCanvas *self)
{
  if (!self->is_under_drawn)
    {
      g_clear_pointer (&self->under, gsk_render_node_unref);
      self->under = draw_around_face (self);
    }
  if (!self->is_over_drawn)
    {
      g_clear_pointer (&self->over, gsk_render_node_unref);
      self->over = draw_node (self, draw_over, 0.0, 0.0, self->layout.width,
                              self->layout.face.top - self->text_size);
    }
  if (!self->is_under_drawn || !self->is_over_drawn)
    gtk_widget_queue_draw (GTK_WIDGET (self));
  self->is_under_drawn = self->is_over_drawn = TRUE;
}
