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
  GskRenderNode *end;
  GskRenderNode *side;
  char *description;
  /* look */
  BsStripLook look;
  double end_bottom, face_top;
  int scale_factor; /* that the pictures are drawn for */
  gboolean is_selected;
};

G_DEFINE_FINAL_TYPE (BsLaminationStrip, bs_lamination_strip, GTK_TYPE_WIDGET)

static void
forget_pictures (BsLaminationStrip *self)
{
  g_clear_pointer (&self->end, gsk_render_node_unref);
  g_clear_pointer (&self->side, gsk_render_node_unref);
}

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

  bs_draw_face (cr, &look->placed, &look->face, look->palette, look->marks);
}

/* Whole pixels, so that neighbours meet without a gap: the canvas puts each at a whole pixel too.
 */
static int
pixels (double size)
{
  return isfinite (size) ? (int)ceil (CLAMP (size, 0.0, 16000.0)) : 0;
}

static void
append_at (GtkSnapshot *snapshot, GskRenderNode *node, double y)
{
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (0.0f, (float)y));
  gtk_snapshot_append_node (snapshot, node);
  gtk_snapshot_restore (snapshot);
}

static void
bs_lamination_strip_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsLaminationStrip *self = BS_LAMINATION_STRIP (widget);
  const BsStripLook *look = &self->look;

  if (self->plan == NULL)
    return;
  if (self->scale_factor != gtk_widget_get_scale_factor (widget))
    forget_pictures (self);
  self->scale_factor = gtk_widget_get_scale_factor (widget);

  int width = pixels (look->placed.thickness * look->section.per_mm_across);
  int height = pixels (look->placed.height_left * look->section.per_mm_across);
  int length = pixels (look->placed.length * look->face.per_mm_along);
  if (self->end == NULL)
    self->end = bs_picture_node_new (&BOUNDS (width, height, 0), self->scale_factor, draw_end,
                                     &self->look);
  append_at (snapshot, self->end, self->end_bottom);
  if (look->is_in_rack)
    return;
  if (self->side == NULL)
    self->side = bs_picture_node_new (&BOUNDS (width, 0, length), self->scale_factor, draw_side,
                                      &self->look);
  append_at (snapshot, self->side, self->face_top);
}

static void
bs_lamination_strip_dispose (GObject *object)
{
  BsLaminationStrip *self = BS_LAMINATION_STRIP (object);

  forget_pictures (self);
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

/* Forgets the pictures that no longer show the look; FALSE when both still do. */
static gboolean
take_look (BsLaminationStrip *self, const BsStripLook *look)
{
  gboolean is_other = self->plan == NULL || !looks_same (&self->look, look);
  gboolean is_other_end = is_other || self->look.marks != look->marks;

  if (is_other_end)
    g_clear_pointer (&self->end, gsk_render_node_unref);
  if (is_other || marks_of_side (self->look.marks) != marks_of_side (look->marks))
    g_clear_pointer (&self->side, gsk_render_node_unref);
  self->look = *look;
  return is_other_end;
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
