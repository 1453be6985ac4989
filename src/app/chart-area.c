/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/chart-area.h"

#include <math.h>

#include "app/appearance.h"

/* Narrower than this it is scrolled. */
#define LEAST_WIDTH 320

struct _BsChartArea
{
  GtkWidget parent_instance;

  BsChartHeight height;
  BsChartDraw draw;
  gpointer user_data;
};

G_DEFINE_FINAL_TYPE (BsChartArea, bs_chart_area, GTK_TYPE_WIDGET)

static BsChart
make_chart (GtkWidget *widget, int width)
{
  return (BsChart){ .width = width,
                    .text_size = bs_appearance_find_text_size (widget),
                    .hairline = 1.0,
                    .palette = bs_appearance_find_palette (widget) };
}

static GtkSizeRequestMode
bs_chart_area_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bs_chart_area_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsChartArea *self = BS_CHART_AREA (widget);

  *minimum = LEAST_WIDTH;
  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      const BsChart chart = make_chart (widget, MAX (for_size, LEAST_WIDTH));
      *minimum = (int)ceil (self->height (&chart, self->user_data));
    }
  *natural = *minimum;
}

static void
bs_chart_area_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsChartArea *self = BS_CHART_AREA (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const BsChart chart = make_chart (widget, width);

  if (height <= 0)
    return;
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)width, (float)height));
  self->draw (cr, &chart, self->user_data);
  cairo_destroy (cr);
}

static void
bs_chart_area_class_init (BsChartAreaClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->get_request_mode = bs_chart_area_get_request_mode;
  widget_class->measure = bs_chart_area_measure;
  widget_class->snapshot = bs_chart_area_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
bs_chart_area_init (BsChartArea *self)
{
}

GtkWidget *
bs_chart_area_new (BsChartHeight height, BsChartDraw draw, gpointer user_data, const char *name)
{
  BsChartArea *self = g_object_new (BS_TYPE_CHART_AREA, NULL);

  self->height = height;
  self->draw = draw;
  self->user_data = user_data;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return GTK_WIDGET (self);
}
