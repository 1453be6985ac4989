/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/slab-page.h"

#include <glib/gi18n.h>

#include "app/chart-area.h"
#include "app/form.h"
#include "app/number-row.h"
#include "app/page.h"
#include "draw/slab-view.h"

#define FIELD(kind, label, hint, member, ...)                                                      \
  {                                                                                                \
    kind, label, hint, G_STRUCT_OFFSET (BsPlan, member), __VA_ARGS__                               \
  }

static const char *const layups[] = {
  N_ ("On edge: wide faces glued"),
  N_ ("On flat: narrow edges glued"),
  NULL,
};

static const char *const unit_systems[] = {
  N_ ("Millimetres, newtons, kilograms"),
  N_ ("Inches, pounds"),
  NULL,
};

static const BsField plan_fields[] = {
  FIELD (BS_FIELD_TEXT, N_ ("Name"), NULL, name),
  FIELD (BS_FIELD_LINES, N_ ("Note"), NULL, note),
  FIELD (BS_FIELD_CHOICE, N_ ("Shown in"),
         N_ ("Whatever is shown, sizes can be typed in any unit: 2440, 8', 4 1/2\", 8/4"), units,
         .choices = unit_systems),
};

static const BsField wanted_fields[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Length"), N_ ("Along the grain, when finished"), slab.length,
         &bs_limits.slab_length),
  FIELD (BS_FIELD_NUMBER, N_ ("Width"), N_ ("Across the laminations, when finished"), slab.width,
         &bs_limits.slab_width),
  FIELD (BS_FIELD_NUMBER, N_ ("Thickness"), N_ ("When flattened on both faces"), slab.thickness,
         &bs_limits.slab_thickness),
  FIELD (BS_FIELD_CHOICE, N_ ("Laminations lie"), NULL, slab.layup, .choices = layups),
  FIELD (BS_FIELD_SWITCH, N_ ("Heart sides alternate"),
         N_ ("Neighbours look opposite ways, so that their cups work against one another"),
         slab.alternate_hearts),
};

static const BsField show_fields[] = {
  FIELD (BS_FIELD_SWITCH, N_ ("Front edge shows"), N_ ("The outer face of the first lamination"),
         slab.shows_front),
  FIELD (BS_FIELD_SWITCH, N_ ("Back edge shows"), N_ ("The outer face of the last lamination"),
         slab.shows_back),
  FIELD (BS_FIELD_SWITCH, N_ ("Underside shows"), NULL, slab.shows_underside),
  FIELD (BS_FIELD_SWITCH, N_ ("Ends show"), NULL, slab.shows_ends),
};

static const BsField season_fields[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Dry season, temperature"), NULL, slab.dry_season.temperature_c,
         &bs_limits.temperature),
  FIELD (BS_FIELD_NUMBER, N_ ("Dry season, humidity"), N_ ("Relative humidity of the air"),
         slab.dry_season.humidity_pct, &bs_limits.humidity),
  FIELD (BS_FIELD_NUMBER, N_ ("Damp season, temperature"), NULL, slab.damp_season.temperature_c,
         &bs_limits.temperature),
  FIELD (BS_FIELD_NUMBER, N_ ("Damp season, humidity"), N_ ("Relative humidity of the air"),
         slab.damp_season.humidity_pct, &bs_limits.humidity),
};

static void
show_moisture_cb (BsNumberRow *row, BsSession *session)
{
  bs_number_row_show (row, &bs_session_get_results (session)->why_moisture,
                      bs_session_get_plan (session)->units, NULL);
}

static GtkWidget *
new_season_block (BsSession *session)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *moisture = bs_number_row_new ();

  gtk_box_append (GTK_BOX (block), bs_form_new (session, N_ ("Where it will live"), &bs_record_plan,
                                                NULL, season_fields, G_N_ELEMENTS (season_fields)));
  gtk_box_append (GTK_BOX (block), moisture);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_moisture_cb), moisture,
                           G_CONNECT_SWAPPED);
  show_moisture_cb (BS_NUMBER_ROW (moisture), session);
  return block;
}

static GtkWidget *
new_block (BsSession *session, const char *heading, const BsField *fields, guint n_fields)
{
  return bs_form_new (session, heading, &bs_record_plan, NULL, fields, n_fields);
}

static double
get_view_height (const BsChart *chart, gpointer session)
{
  return bs_slab_view_get_height (bs_session_get_results (session)->stack, chart);
}

static void
draw_view (cairo_t *cr, const BsChart *chart, gpointer session)
{
  bs_draw_slab_view (cr, bs_session_get_results (session)->stack, chart);
}

static GtkWidget *
new_view (BsSession *session)
{
  GtkWidget *view = bs_chart_area_new (
      get_view_height, draw_view, session,
      _ ("The slab seen from the front and above; its sizes are in the fields below"));

  g_signal_connect_object (session, "changed", G_CALLBACK (gtk_widget_queue_resize), view,
                           G_CONNECT_SWAPPED);
  return view;
}

GtkWidget *
bs_slab_page_new (BsSession *session)
{
  GtkWidget *page = bs_page_new ();

  bs_page_add_wide (page, new_view (session));
  bs_page_add (page, new_block (session, N_ ("What is wanted"), wanted_fields,
                                G_N_ELEMENTS (wanted_fields)));
  bs_page_add (
      page, new_block (session, N_ ("What people see"), show_fields, G_N_ELEMENTS (show_fields)));
  bs_page_add (page, new_season_block (session));
  bs_page_add (page,
               new_block (session, N_ ("This plan"), plan_fields, G_N_ELEMENTS (plan_fields)));
  return page;
}
