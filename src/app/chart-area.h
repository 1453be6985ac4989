/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/chart.h"

G_BEGIN_DECLS

/* A chart in the window: as wide as there is room, as high as it says for that width, in letters of
 * the theme's size and colours that fit it. */
typedef double (*BsChartHeight) (const BsChart *chart, gpointer user_data);
typedef void (*BsChartDraw) (cairo_t *cr, const BsChart *chart, gpointer user_data);

#define BS_TYPE_CHART_AREA (bs_chart_area_get_type ())
G_DECLARE_FINAL_TYPE (BsChartArea, bs_chart_area, BS, CHART_AREA, GtkWidget)

/* `name` tells those who do not see it what it is, already translated. After a change of what the
 * height depends on: gtk_widget_queue_resize. */
GtkWidget *bs_chart_area_new (BsChartHeight height, BsChartDraw draw, gpointer user_data,
                              const char *name);

G_END_DECLS
