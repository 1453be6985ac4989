/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/schedule-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/number-row.h"
#include "app/page.h"
#include "core/units.h"
#include "draw/timeline.h"
#include "words/schedule.h"

struct _BsSchedulePage
{
  GtkWidget parent_instance;

  BsSession *session;
  GtkWidget *page;
  /* borrowed from the page */
  GtkLabel *summary;
  GtkLabel *numbers;
  GtkWidget *longest; /* BsNumberRow */
  GtkWidget *picture;
  GtkBox *presses;
};

G_DEFINE_FINAL_TYPE (BsSchedulePage, bs_schedule_page, GTK_TYPE_WIDGET)

static const BsForecast *
get_forecast (BsSchedulePage *self)
{
  BsStudy *study = bs_session_get_study (self->session, &bs_study_forecast);

  return bs_study_is_current (study) ? bs_study_get_result (study) : NULL;
}

static double
find_text_size (GtkWidget *widget)
{
  PangoFontDescription *font
      = pango_context_get_font_description (gtk_widget_get_pango_context (widget));
  double size = (double)pango_font_description_get_size (font) / PANGO_SCALE;

  return pango_font_description_get_size_is_absolute (font) ? size : size * 96.0 / 72.0;
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data)
{
  const BsForecast *forecast = get_forecast (BS_SCHEDULE_PAGE (user_data));

  if (forecast != NULL)
    bs_draw_timeline (cr, forecast, width, find_text_size (GTK_WIDGET (area)), 1.0,
                      bs_appearance_find_palette (GTK_WIDGET (area)));
}

static GtkLabel *
label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_focusable (label, FALSE); /* or all of it is selected at once */
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return GTK_LABEL (label);
}

static void
add_words (BsSchedulePage *self, const char *heading, const char *text)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  if (heading != NULL)
    gtk_box_append (GTK_BOX (box), GTK_WIDGET (label_new (heading, "strong")));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (label_new (text, NULL)));
  gtk_box_append (self->presses, box);
}

static void
add_press (BsSchedulePage *self, const BsForecast *forecast, const BsStage *stage, guint number)
{
  g_autofree char *name = bs_words_press_name (forecast, stage);
  g_autofree char *text = bs_words_press (forecast, stage);
  /* Translators: number of the press, number of the round, and its laminations: "A1 to B2". */
  g_autofree char *heading
      = g_strdup_printf (_ ("Press %u, round %d: %s"), number, stage->round + 1, name);

  add_words (self, heading, text);
}

static void
add_remedies (BsSchedulePage *self, const BsForecast *forecast)
{
  const BsPlan *plan = forecast->stack->plan;
  const char *heading = _ ("Any one of these would make it possible");

  for (guint i = 0; i < forecast->remedies->len; i++)
    {
      const BsStagesRemedy *remedy = &g_array_index (forecast->remedies, BsStagesRemedy, i);
      g_autofree char *text = bs_words_stages_remedy (remedy, plan->units);

      add_words (self, i == 0 ? heading : NULL, text);
    }
}

static gboolean
is_impossible (const BsForecast *forecast)
{
  const BsStagesPlan *schedule = bs_forecast_get_schedule (forecast);

  return forecast->has_job && (schedule == NULL || !bs_stages_plan_is_possible (schedule));
}

static const BsStage *
find_longest (const BsStagesPlan *schedule)
{
  const BsStage *longest = &g_array_index (schedule->stages, BsStage, 0);

  for (guint i = 1; i < schedule->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (schedule->stages, BsStage, i);

      if (stage->times.total_s > longest->times.total_s)
        longest = stage;
    }
  return longest;
}

static void
show_numbers (BsSchedulePage *self, const BsForecast *forecast, const BsStagesPlan *schedule)
{
  BsUnitSystem units = forecast->stack->plan->units;
  g_autofree char *elapsed = bs_units_format (schedule->elapsed_s, BS_QUANTITY_TIME, units);
  g_autofree char *presses = g_strdup_printf (
      ngettext ("%u press", "%u presses", schedule->stages->len), schedule->stages->len);
  g_autofree char *rounds = g_strdup_printf (
      ngettext ("%d round", "%d rounds", (unsigned long)schedule->n_rounds), schedule->n_rounds);
  /* Translators: "5 presses in 2 rounds; 26 h 20 min from the first glue to the last clamp off". */
  g_autofree char *text = g_strdup_printf (
      _ ("%s in %s; %s from the first glue to the last clamp off"), presses, rounds, elapsed);
  BsWorking why;

  gtk_label_set_text (self->numbers, text);
  bs_forecast_why_assembly (forecast, find_longest (schedule), &why);
  bs_number_row_show (BS_NUMBER_ROW (self->longest), &why, units, NULL);
}

static void
forget (BsSchedulePage *self)
{
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (self->presses))) != NULL;)
    gtk_box_remove (self->presses, child);
  gtk_label_set_text (self->numbers, "");
}

static void
show_forecast (BsSchedulePage *self, const BsForecast *forecast)
{
  const BsStagesPlan *schedule = bs_forecast_get_schedule (forecast);
  g_autofree char *summary = bs_words_schedule (forecast);

  gtk_label_set_text (self->summary, summary);
  add_remedies (self, forecast);
  if (is_impossible (forecast) && forecast->remedies->len == 0)
    add_words (self, NULL, _ ("No single change would make it possible."));
  if (schedule == NULL)
    return;
  show_numbers (self, forecast, schedule);
  for (guint i = 0; i < schedule->stages->len; i++)
    add_press (self, forecast, &g_array_index (schedule->stages, BsStage, i), i + 1);
}

static void
changed_cb (BsSchedulePage *self)
{
  const BsForecast *forecast = get_forecast (self);
  gboolean has_schedule = forecast != NULL && bs_forecast_get_schedule (forecast) != NULL;
  double text_size = find_text_size (self->picture);

  forget (self);
  gtk_widget_set_visible (self->picture, has_schedule);
  gtk_widget_set_visible (GTK_WIDGET (self->numbers), has_schedule);
  gtk_widget_set_visible (self->longest, has_schedule);
  if (has_schedule)
    gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->picture),
                                         (int)ceil (bs_timeline_get_height (forecast, text_size)));
  gtk_widget_queue_draw (self->picture);
  if (forecast == NULL)
    gtk_label_set_text (self->summary, _ ("Working…"));
  else
    show_forecast (self, forecast);
}

static void
bs_schedule_page_dispose (GObject *object)
{
  BsSchedulePage *self = BS_SCHEDULE_PAGE (object);

  g_clear_pointer (&self->page, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_schedule_page_parent_class)->dispose (object);
}

static void
bs_schedule_page_class_init (BsSchedulePageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_schedule_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
bs_schedule_page_init (BsSchedulePage *self)
{
  self->page = bs_page_new ();
  self->summary = label_new (NULL, NULL);
  self->numbers = label_new (NULL, "strong");
  self->longest = bs_number_row_new ();
  self->picture = gtk_drawing_area_new ();
  self->presses = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 12));
  gtk_widget_set_size_request (self->longest, 320, -1);
  gtk_widget_set_halign (self->longest, GTK_ALIGN_START);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->picture), draw_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The presses over time; each is told in words below"), -1);
  bs_page_add_wide (self->page, GTK_WIDGET (self->numbers));
  bs_page_add_wide (self->page, GTK_WIDGET (self->summary));
  bs_page_add_wide (self->page, self->picture);
  bs_page_add_wide (self->page, self->longest);
  bs_page_add_wide (self->page, GTK_WIDGET (self->presses));
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
}

GtkWidget *
bs_schedule_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsSchedulePage *self = g_object_new (BS_TYPE_SCHEDULE_PAGE, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (bs_session_get_study (session, &bs_study_forecast), "changed",
                           G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
