/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/lamination-strip.h"

#include <math.h>

#include "app/picture-node.h"

/* Pixels around a picture for lines that lie on its edge. */
#define PAD 4

/* Around a picture that goes so far right, up and down from its origin. */
#define BOUNDS(width, up, down)                                                                    \
  GRAPHENE_RECT_INIT (-PAD, (float)(-PAD - (up)), (float)((width) + 2 * PAD),                      \
                      (float)((up) + (down) + 2 * PAD))

struct _BsLaminationStrip
{
  GtkWidget parent_instance;

  /* owned */
  BsPlan *plan;
  GskRenderNode *end; /* as last drawn; NULL: not yet */
  GskRenderNode *side;
  char *description;
  /* look: the photo is owned too */
  BsStripLook look;
  double end_bottom, face_top;
  int scale_factor;                     /* that the pictures are drawn for */
  gboolean is_end_drawn, is_side_drawn; /* as it looks now */
  gboolean is_selected;
};

G_DEFINE_FINAL_TYPE (BsLaminationStrip, bs_lamination_strip, GTK_TYPE_WIDGET)

static void
draw_end (cairo_t *cr, gpointer data)
{
  const BsStripLook *look = data;

  bs_draw_end (cr, &look->placed, &look->section, look->palette, look->marks);
}

static void
draw_side (cairo_t *cr, gpointer data)
{
  const BsStripLook *look = data;

  bs_draw_face (cr, &look->placed, &look->photo, &look->face, look->palette, look->marks);
}

/* Whole pixels, so that neighbours meet without a gap: the canvas puts each at a whole pixel too.
 */
static int
pixels (double size)
{
  return isfinite (size) ? (int)ceil (CLAMP (size, 0.0, 16000.0)) : 0;
}

static graphene_rect_t
end_bounds (const BsStripLook *look)
{
  return BOUNDS (pixels (look->placed.thickness * look->section.per_mm_across),
                 pixels (look->placed.height_left * look->section.per_mm_across), 0);
}

static graphene_rect_t
side_bounds (const BsStripLook *look)
{
  return BOUNDS (pixels (look->placed.thickness * look->section.per_mm_across), 0,
                 pixels (look->placed.length * look->face.per_mm_along));
}

/* Until it is drawn anew, the last picture, brought to the size of the new one; or the bare wood.
 */
static void
append_picture (GtkSnapshot *snapshot, GskRenderNode *node, const graphene_rect_t *bounds, double y,
                const BsStripLook *look)
{
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (0.0f, (float)y));
  if (node != NULL)
    {
      graphene_rect_t drawn;

      gsk_render_node_get_bounds (node, &drawn);
      if (!graphene_size_equal (&drawn.size, &bounds->size))
        gtk_snapshot_scale (snapshot, bounds->size.width / drawn.size.width,
                            bounds->size.height / drawn.size.height);
      gtk_snapshot_append_node (snapshot, node);
    }
  else
    {
      BsColor wood
          = bs_palette_wood (look->palette, look->placed.wood, look->placed.lamination->lightness);
      GdkRGBA color = { (float)wood.red, (float)wood.green, (float)wood.blue, (float)wood.alpha };
      graphene_rect_t bare;

      graphene_rect_inset_r (bounds, PAD, PAD, &bare);
      gtk_snapshot_append_color (snapshot, &color, &bare);
    }
  gtk_snapshot_restore (snapshot);
}

static void
bs_lamination_strip_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsLaminationStrip *self = BS_LAMINATION_STRIP (widget);
  const BsStripLook *look = &self->look;
  graphene_rect_t end = end_bounds (look), side = side_bounds (look);

  if (self->plan == NULL)
    return;
  append_picture (snapshot, self->end, &end, self->end_bottom, look);
  if (!look->is_in_rack)
    append_picture (snapshot, self->side, &side, self->face_top, look);
}

static void
bs_lamination_strip_dispose (GObject *object)
{
  BsLaminationStrip *self = BS_LAMINATION_STRIP (object);

  g_clear_pointer (&self->end, gsk_render_node_unref);
  g_clear_pointer (&self->side, gsk_render_node_unref);
  g_clear_pointer (&self->look.photo.surface, cairo_surface_destroy);
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
         && is_same (a->text_size, b->text_size) && is_same (a->label_size, b->label_size)
         && a->labels_stand == b->labels_stand;
}

static gboolean
is_same_photo (const BsFacePhoto *a, const BsFacePhoto *b)
{
  return a->surface == b->surface && a->is_underside == b->is_underside
         && is_same (a->part.x, b->part.x) && is_same (a->part.y, b->part.y)
         && is_same (a->part.width, b->part.width) && is_same (a->part.height, b->part.height);
}

/* Laminations and woods are shared by the plans of a session and never change, so that the same
 * pointer is the same look. */
static gboolean
looks_same (const BsStripLook *a, const BsStripLook *b)
{
  return a->placed.lamination == b->placed.lamination && a->placed.wood == b->placed.wood
         && a->placed.orientation == b->placed.orientation && a->is_in_rack == b->is_in_rack
         && a->palette == b->palette && is_same_scale (&a->section, &b->section)
         && is_same_scale (&a->face, &b->face);
}

/* The side shows no findings. */
static BsMark
marks_of_side (BsMark marks)
{
  return marks & (BS_MARK_SELECTED | BS_MARK_HELD);
}

/* FALSE when the pictures still show the look. */
static gboolean
take_look (BsLaminationStrip *self, const BsStripLook *look)
{
  gboolean is_other = self->plan == NULL || !looks_same (&self->look, look);

  if (is_other || self->look.marks != look->marks)
    self->is_end_drawn = FALSE;
  if (is_other || marks_of_side (self->look.marks) != marks_of_side (look->marks)
      || !is_same_photo (&self->look.photo, &look->photo))
    self->is_side_drawn = FALSE;
  if (look->photo.surface != NULL)
    cairo_surface_reference (look->photo.surface);
  g_clear_pointer (&self->look.photo.surface, cairo_surface_destroy);
  self->look = *look;
  return !self->is_end_drawn;
}

void
bs_lamination_strip_show (BsLaminationStrip *self, BsPlan *plan, const BsStripLook *look,
                          double end_bottom, double face_top)
{
  g_return_if_fail (BS_IS_LAMINATION_STRIP (self));
  g_return_if_fail (plan != NULL);

  gboolean is_new = take_look (self, look);
  gboolean has_moved
      = !is_same (self->end_bottom, end_bottom) || !is_same (self->face_top, face_top);
  bs_plan_ref (plan);
  g_clear_pointer (&self->plan, bs_plan_unref);
  self->plan = plan;
  self->end_bottom = end_bottom;
  self->face_top = face_top;
  if (is_new || has_moved)
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
bs_lamination_strip_draw (BsLaminationStrip *self)
{
  g_return_val_if_fail (BS_IS_LAMINATION_STRIP (self), FALSE);

  BsStripLook *look = &self->look;
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  gboolean is_fit = factor == self->scale_factor;
  graphene_rect_t end = end_bounds (look), side = side_bounds (look);

  if (is_fit && self->is_end_drawn && (self->is_side_drawn || look->is_in_rack))
    return FALSE;
  if (!is_fit || !self->is_end_drawn)
    {
      g_clear_pointer (&self->end, gsk_render_node_unref);
      self->end = bs_picture_node_new (&end, factor, draw_end, look);
    }
  if (!look->is_in_rack && (!is_fit || !self->is_side_drawn))
    {
      g_clear_pointer (&self->side, gsk_render_node_unref);
      self->side = bs_picture_node_new (&side, factor, draw_side, look);
      self->is_side_drawn = TRUE;
    }
  self->is_end_drawn = TRUE;
  self->scale_factor = factor;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
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
