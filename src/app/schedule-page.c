/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/schedule-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/number-row.h"
#include "app/packs-editor.h"
#include "app/page.h"
#include "app/press-row.h"
#include "app/schedule-choices.h"
#include "draw/timeline.h"
#include "words/schedule.h"

/* Of what belongs to an older plan, while the newer one is worked out. */
#define STALE_OPACITY 0.45

struct _BsSchedulePage
{
  GtkWidget parent_instance;

  BsSession *session;
  GtkWidget *page;
  /* borrowed from the page */
  GtkWidget *progress;
  GtkWidget *result; /* all that follows from the plan */
  GtkLabel *summary;
  GtkBox *remedies;
  BsScheduleChoices *choices;
  GtkWidget *elapsed; /* BsNumberRow */
  GtkWidget *picture;
  GtkBox *presses;
};

G_DEFINE_FINAL_TYPE (BsSchedulePage, bs_schedule_page, GTK_TYPE_WIDGET)

static BsStudy *
get_study (BsSchedulePage *self)
{
  return bs_session_get_study (self->session, &bs_study_schedule);
}

static double
find_text_size (GtkWidget *widget)
{
  PangoFontDescription *font
      = pango_context_get_font_description (gtk_widget_get_pango_context (widget));
  double size = (double)pango_font_description_get_size (font) / PANGO_SCALE;

  return pango_font_description_get_size_is_absolute (font) ? size : size * 96.0 / 72.0;
}

/* The picture of what is looked at; its presses are NULL when there is nothing. */
static BsTimeline
find_timeline (BsSchedulePage *self, double width)
{
  const BsSchedule *schedule = bs_study_get_result (get_study (self));

  return (BsTimeline){
    .schedule = schedule,
    .presses = bs_schedule_choices_find (self->choices, schedule),
    .width = width,
    .text_size = find_text_size (self->picture),
    .hairline = 1.0,
    .palette = bs_appearance_find_palette (self->picture),
  };
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data)
{
  BsTimeline timeline = find_timeline (BS_SCHEDULE_PAGE (user_data), width);

  if (timeline.presses != NULL)
    bs_timeline_draw (&timeline, cr);
}

/* The key takes more lines when it is narrow. */
static void
fit_picture (BsSchedulePage *self)
{
  int width = gtk_widget_get_width (self->picture);
  BsTimeline timeline = find_timeline (self, width > 0 ? width : 600);

  if (timeline.presses != NULL)
    gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->picture),
                                         (int)ceil (bs_timeline_get_height (&timeline)));
}

static gboolean
fit_later_cb (gpointer user_data)
{
  fit_picture (user_data);
  return G_SOURCE_REMOVE;
}

/* Not while places are being given out. */
static void
resize_cb (BsSchedulePage *self)
{
  g_idle_add_full (G_PRIORITY_HIGH_IDLE, fit_later_cb, g_object_ref (self), g_object_unref);
}

static void
empty_box (GtkBox *box)
{
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL;)
    gtk_box_remove (box, child);
}

static void
show_remedies (BsSchedulePage *self, const BsSchedule *schedule)
{
  empty_box (self->remedies);
  gtk_widget_set_visible (GTK_WIDGET (self->remedies), !bs_schedule_is_possible (schedule));
  gtk_box_append (self->remedies,
                  bs_page_text_new (bs_words_remedies_heading (schedule), "strong"));
  for (guint i = 0; i < schedule->remedies->len; i++)
    {
      const BsStagesRemedy *remedy = &g_array_index (schedule->remedies, BsStagesRemedy, i);
      g_autofree char *text = bs_words_stages_remedy (remedy, schedule->stack->plan->units);
      g_autofree char *line = g_strdup_printf ("•  %s", text);

      gtk_box_append (self->remedies, bs_page_text_new (line, NULL));
    }
}

static void
show_presses (BsSchedulePage *self, const BsSchedule *schedule)
{
  const BsStagesPlan *presses = bs_schedule_choices_find (self->choices, schedule);
  gboolean has_presses = presses != NULL;
  BsWorking why;

  empty_box (self->presses);
  gtk_widget_set_visible (self->picture, has_presses);
  gtk_widget_set_visible (self->elapsed, has_presses);
  if (!has_presses)
    return;
  bs_schedule_why_elapsed (schedule, presses, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->elapsed), &why, schedule->stack->plan->units, NULL);
  fit_picture (self);
  gtk_widget_queue_draw (self->picture);
  for (guint i = 0; i < presses->stages->len; i++)
    gtk_box_append (self->presses, bs_press_row_new (schedule, presses, i));
}

static void
look_cb (BsSchedulePage *self)
{
  const BsSchedule *schedule = bs_study_get_result (get_study (self));

  if (schedule == NULL)
    return;
  bs_schedule_choices_show (self->choices, schedule);
  show_presses (self, schedule);
}

static void
changed_cb (BsSchedulePage *self)
{
  BsStudy *study = get_study (self);
  const BsSchedule *schedule = bs_study_get_result (study);
  gboolean is_current = bs_study_is_current (study);

  gtk_widget_set_visible (self->progress, !is_current);
  gtk_widget_set_visible (self->result, schedule != NULL);
  gtk_widget_set_opacity (self->result, is_current ? 1.0 : STALE_OPACITY);
  gtk_widget_set_sensitive (self->result, is_current);
  if (!is_current || schedule == NULL)
    return;

  g_autofree char *summary = bs_words_schedule (schedule);
  gtk_label_set_text (self->summary, summary);
  show_remedies (self, schedule);
  look_cb (self);
}

static void
progress_cb (BsSchedulePage *self)
{
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress),
                                 bs_study_get_progress (get_study (self)));
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
  self->progress = gtk_progress_bar_new ();
  self->result = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  self->summary = GTK_LABEL (bs_page_text_new (NULL, NULL));
  self->remedies = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  self->elapsed = bs_number_row_new ();
  self->picture = gtk_drawing_area_new ();
  self->presses = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 18));
  gtk_progress_bar_set_show_text (GTK_PROGRESS_BAR (self->progress), TRUE);
  gtk_progress_bar_set_text (GTK_PROGRESS_BAR (self->progress), _ ("Working…"));
  gtk_widget_set_size_request (self->elapsed, 320, -1);
  gtk_widget_set_halign (self->elapsed, GTK_ALIGN_START);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->picture), draw_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The presses over time; each is told in words below"), -1);
  g_signal_connect_object (self->picture, "resize", G_CALLBACK (resize_cb), self,
                           G_CONNECT_SWAPPED);
}

/* In the order in which they stand under one another. */
static void
build (BsSchedulePage *self)
{
  GtkWidget *children[] = { GTK_WIDGET (self->summary),
                            GTK_WIDGET (self->remedies),
                            GTK_WIDGET (self->choices),
                            self->elapsed,
                            self->picture,
                            GTK_WIDGET (self->presses) };

  for (guint i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_box_append (GTK_BOX (self->result), children[i]);
  self->page = bs_page_new ();
  bs_page_add_wide (self->page, self->progress);
  bs_page_add_wide (self->page, self->result);
  bs_page_add_wide (self->page, bs_packs_editor_new (self->session));
  bs_page_add_wide (
      self->page,
      bs_page_text_new (_ ("The times are those of the hands in Shop: time yourselves once and "
                           "type them there. Try the hardest press dry, with a watch, before any "
                           "glue is spread, and go by the adhesive’s data sheet."),
                        "faint"));
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
}

GtkWidget *
bs_schedule_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsSchedulePage *self = g_object_new (BS_TYPE_SCHEDULE_PAGE, NULL);
  self->session = g_object_ref (session);
  self->choices = BS_SCHEDULE_CHOICES (bs_schedule_choices_new (session));
  build (self);
  g_signal_connect_object (self->choices, "changed", G_CALLBACK (look_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (get_study (self), "changed", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (get_study (self), "notify::progress", G_CALLBACK (progress_cb), self,
                           G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
