/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/lamination-strip.h"

#include <math.h>

/* Pixels around a picture for lines that lie on its edge. */
#define PAD 4

struct _BsLaminationStrip
{
  GtkWidget parent_instance;

  /* owned */
  BsPlan *plan;
  GdkTexture *end;
  GdkTexture *side;
  char *description;
  /* look */
  BsStripLook look;
  double end_bottom, face_top;
  int scale_factor; /* that the textures are drawn for */
  gboolean is_selected;
};

G_DEFINE_FINAL_TYPE (BsLaminationStrip, bs_lamination_strip, GTK_TYPE_WIDGET)

static void
forget_textures (BsLaminationStrip *self)
{
  g_clear_object (&self->end);
  g_clear_object (&self->side);
}

typedef void (*DrawFunc) (cairo_t *cr, const BsPlaced *placed, const BsScale *scale,
                          const BsPalette *palette, BsMark marks);

/* An image of what `draw` draws, with `up` pixels above its origin and `down` below. */
static GdkTexture *
draw_texture (BsLaminationStrip *self, DrawFunc draw, const BsScale *scale, int width, int up,
              int down)
{
  int factor = self->scale_factor;
  int pixel_width = (width + 2 * PAD) * factor, pixel_height = (up + down + 2 * PAD) * factor;
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, pixel_width, pixel_height);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, factor, factor);
  cairo_translate (cr, PAD, PAD + up);
  draw (cr, &self->look.placed, scale, self->look.palette, self->look.marks);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  gsize stride = (gsize)cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = g_bytes_new_with_free_func (
      cairo_image_surface_get_data (surface), stride * (gsize)pixel_height,
      (GDestroyNotify)cairo_surface_destroy, surface);
  return gdk_memory_texture_new (pixel_width, pixel_height, GDK_MEMORY_DEFAULT, bytes, stride);
}

/* Whole pixels, so that neighbours meet without a gap: the canvas puts each at a whole pixel too.
 */
static int
pixels (double size)
{
  return isfinite (size) ? (int)ceil (CLAMP (size, 0.0, 16000.0)) : 0;
}

static void
append_texture (GtkSnapshot *snapshot, GdkTexture *texture, int scale_factor, float x, float y)
{
  float width = (float)gdk_texture_get_width (texture) / (float)scale_factor;
  float height = (float)gdk_texture_get_height (texture) / (float)scale_factor;

  gtk_snapshot_append_texture (snapshot, texture,
                               &GRAPHENE_RECT_INIT (x - PAD, y - PAD, width, height));
}

static void
bs_lamination_strip_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsLaminationStrip *self = BS_LAMINATION_STRIP (widget);
  const BsStripLook *look = &self->look;

  if (self->plan == NULL)
    return;
  if (self->scale_factor != gtk_widget_get_scale_factor (widget))
    forget_textures (self);
  self->scale_factor = gtk_widget_get_scale_factor (widget);

  int width = pixels (look->placed.thickness * look->section.per_mm_across);
  int height = pixels (look->placed.height_left * look->section.per_mm_across);
  int length = pixels (look->placed.length * look->face.per_mm_along);
  if (self->end == NULL)
    self->end = draw_texture (self, bs_draw_end, &look->section, width, height, 0);
  append_texture (snapshot, self->end, self->scale_factor, 0.0f, (float)self->end_bottom - height);
  if (look->is_in_rack)
    return;
  if (self->side == NULL)
    self->side = draw_texture (self, bs_draw_face, &look->face, width, 0, length);
  append_texture (snapshot, self->side, self->scale_factor, 0.0f, (float)self->face_top);
}

static void
bs_lamination_strip_dispose (GObject *object)
{
  BsLaminationStrip *self = BS_LAMINATION_STRIP (object);

  forget_textures (self);
  g_clear_pointer (&self->plan, bs_plan_unref);
  G_OBJECT_CLASS (bs_lamination_strip_parent_class)->dispose (object);
}

static void
bs_lamination_strip_finalize (GObject *object)
{
  g_clear_pointer (&BS_LAMINATION_STRIP (object)->description, g_free);
  G_OBJECT_CLASS (bs_lamination_strip_parent_class)->finalize (object);
}

static void
bs_lamination_strip_class_init (BsLaminationStripClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_lamination_strip_dispose;
  object_class->finalize = bs_lamination_strip_finalize;
  widget_class->snapshot = bs_lamination_strip_snapshot;

  gtk_widget_class_set_css_name (widget_class, "lamination");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
}

static void
bs_lamination_strip_init (BsLaminationStrip *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}

GtkWidget *
bs_lamination_strip_new (void)
{
  return g_object_new (BS_TYPE_LAMINATION_STRIP, NULL);
}

static gboolean
is_same (double a, double b)
{
  return !(a < b) && !(a > b);
}

static gboolean
is_same_scale (const BsScale *a, const BsScale *b)
{
  return is_same (a->per_mm_across, b->per_mm_across) && is_same (a->per_mm_along, b->per_mm_along)
         && is_same (a->text_size, b->text_size) && is_same (a->label_size, b->label_size);
}

/* Laminations and woods are shared by the plans of a session and never change, so that the same
 * pointer is the same look. */
static gboolean
looks_same (const BsStripLook *a, const BsStripLook *b)
{
  return a->placed.lamination == b->placed.lamination && a->placed.wood == b->placed.wood
         && a->placed.orientation == b->placed.orientation && a->is_in_rack == b->is_in_rack
         && a->marks == b->marks && a->palette == b->palette
         && is_same_scale (&a->section, &b->section) && is_same_scale (&a->face, &b->face);
}

void
bs_lamination_strip_show (BsLaminationStrip *self, BsPlan *plan, const BsStripLook *look,
                          double end_bottom, double face_top)
{
  g_return_if_fail (BS_IS_LAMINATION_STRIP (self));
  g_return_if_fail (plan != NULL);

  gboolean is_new = self->plan == NULL || !looks_same (&self->look, look);
  gboolean has_moved
      = !is_same (self->end_bottom, end_bottom) || !is_same (self->face_top, face_top);
  bs_plan_ref (plan);
  g_clear_pointer (&self->plan, bs_plan_unref);
  self->plan = plan;
  self->look = *look;
  self->end_bottom = end_bottom;
  self->face_top = face_top;
  if (is_new)
    forget_textures (self);
  if (is_new || has_moved)
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
bs_lamination_strip_describe (BsLaminationStrip *self, const char *text, gboolean is_selected)
{
  g_return_if_fail (BS_IS_LAMINATION_STRIP (self));

  if (g_strcmp0 (self->description, text) == 0 && self->is_selected == is_selected)
    return;
  g_free (self->description);
  self->description = g_strdup (text);
  self->is_selected = is_selected;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_SELECTED, is_selected,
                               -1);
}
