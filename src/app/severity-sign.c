/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/severity-sign.h"

#include "app/appearance.h"
#include "draw/marks.h"

#define SIZE 16

struct _BsSeveritySign
{
  GtkWidget parent_instance;

  BsSeverity severity;
};

G_DEFINE_FINAL_TYPE (BsSeveritySign, bs_severity_sign, GTK_TYPE_WIDGET)

static BsColor
find_color (GtkWidget *widget)
{
  GdkRGBA color;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
  return (BsColor){ color.red, color.green, color.blue, color.alpha };
}

static void
draw_ring (cairo_t *cr, const BsColor *ink)
{
  bs_color_set (ink, cr);
  cairo_set_line_width (cr, 2.0);
  cairo_arc (cr, 0.5 * SIZE, 0.5 * SIZE, 5.0, 0.0, 2.0 * G_PI);
  cairo_stroke (cr);
}

static void
bs_severity_sign_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsSeveritySign *self = BS_SEVERITY_SIGN (widget);
  BsColor ink = find_color (widget);
  float top = 0.5f * (float)(gtk_widget_get_height (widget) - SIZE);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0.0f, top, SIZE, SIZE));

  cairo_translate (cr, 0.0, top);
  if (self->severity == BS_SEVERITY_NOTE)
    draw_ring (cr, &ink);
  else
    bs_mark_finding (cr, 0.5 * SIZE, 0.5 * SIZE, 0.85 * SIZE, self->severity, &ink,
                     &bs_appearance_find_palette (widget)->ground);
  cairo_destroy (cr);
}

static void
bs_severity_sign_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = SIZE;
}

static void
bs_severity_sign_class_init (BsSeveritySignClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->measure = bs_severity_sign_measure;
  widget_class->snapshot = bs_severity_sign_snapshot;

  gtk_widget_class_set_css_name (widget_class, "severitysign");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
bs_severity_sign_init (BsSeveritySign *self)
{
}

void
bs_severity_sign_show (BsSeveritySign *self, BsSeverity severity)
{
  g_return_if_fail (BS_IS_SEVERITY_SIGN (self));

  if (severity == self->severity)
    return;
  self->severity = severity;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
