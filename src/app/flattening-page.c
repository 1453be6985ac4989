/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/flattening-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/flattening-fields.h"
#include "app/form.h"
#include "app/number-row.h"
#include "app/page.h"
#include "app/removal-view.h"
#include "core/flatten-explain.h"
#include "core/flatten.h"
#include "core/forecast.h"
#include "draw/odds.h"
#include "draw/profile.h"
#include "draw/removal.h"
#include "words/flattening.h"

#define ROW_WIDTH 300 /* pixels */

typedef enum
{
  SURE_WANTED = BS_N_SURE, /* after the three thicknesses */
  SURE_HEIGHT,
  N_SURE_ROWS
} SureRow;

struct _BsFlatteningPage
{
  GtkWidget parent_instance;

  BsSession *session;
  BsFlattenMap *map; /* by the plan's order of work */
  GtkWidget *page;
  /* borrowed from the page */
  BsRemovalView *maps;
  GtkWidget *profiles[2]; /* by BsProfile */
  GtkWidget *odds;
  BsNumberRow *works[BS_N_FLATTEN_WORKS];
  BsNumberRow *sures[N_SURE_ROWS];
  BsNumberRow *packs, *cup;
  GtkWidget *numbers[3];                /* blocks that need something to flatten */
  GtkWidget *planer;                    /* the block around `packs` */
  GtkButton *spots[2][BS_N_DEEP_SPOTS]; /* underside, top */
  GtkLabel *no_spots[2];
  GtkLabel *nothing, *steps, *choice, *planer_words;
};

G_DEFINE_FINAL_TYPE (BsFlatteningPage, bs_flattening_page, GTK_TYPE_WIDGET)

static const BsStack *
get_stack (BsFlatteningPage *self)
{
  return bs_session_get_results (self->session)->stack;
}

static const BsForecast *
get_forecast (BsFlatteningPage *self)
{
  BsStudy *study = bs_session_get_study (self->session, &bs_study_forecast);

  return bs_study_is_current (study) ? bs_study_get_result (study) : NULL;
}

/* The selected lamination's deepest spot of the show face, else the deepest of all. */
static void
find_cut (BsFlatteningPage *self, double *x, double *y)
{
  const BsStack *stack = get_stack (self);
  const char *selected = bs_session_get_selected (self->session);
  int place = selected != NULL ? bs_plan_find_place (stack->plan, selected) : -1;

  const BsDeepSpots *deep = &self->map->deep_top;

  *x = deep->n > 0 ? deep->spots[0].x : 0.5 * stack->length;
  *y = deep->n > 0 ? deep->spots[0].y : 0.5 * stack->width;
  if (place < 0)
    return;
  *y = stack->placed[place].y + 0.5 * stack->placed[place].thickness;
  for (guint i = 0; i < deep->n; i++)
    if (deep->spots[i].place == place)
      *x = deep->spots[i].x;
}

static void
draw_profile (BsFlatteningPage *self, BsProfile profile, cairo_t *cr, int width)
{
  GtkWidget *area = self->profiles[profile];
  double x, y;

  if (self->map->n_x == 0)
    return;
  find_cut (self, &x, &y);
  bs_draw_profile (cr, self->map, get_stack (self), profile, profile == BS_PROFILE_ACROSS ? x : y,
                   width, bs_appearance_find_text_size (area), 1.0,
                   bs_appearance_find_palette (area));
}

static void
draw_across_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer self)
{
  draw_profile (self, BS_PROFILE_ACROSS, cr, width);
}

static void
draw_along_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer self)
{
  draw_profile (self, BS_PROFILE_ALONG, cr, width);
}

static void
draw_odds_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data)
{
  BsFlatteningPage *self = user_data;
  const BsForecast *forecast = get_forecast (self);
  const BsPlan *plan = get_stack (self)->plan;

  if (forecast != NULL)
    bs_draw_odds (cr, &forecast->odds, plan->slab.thickness, plan->units, width,
                  bs_appearance_find_text_size (GTK_WIDGET (area)), 1.0,
                  bs_appearance_find_palette (GTK_WIDGET (area)));
}

static void
show_works (BsFlatteningPage *self)
{
  const BsStack *stack = get_stack (self);
  BsFlattenResult by_work[BS_N_FLATTEN_WORKS];

  for (int i = 0; i < BS_N_FLATTEN_WORKS; i++)
    {
      BsWorking why;

      bs_flatten_by (stack, (BsFlattenWork)i, &by_work[i]);
      bs_flatten_explain (&by_work[i], (BsFlattenWork)i, stack, &why);
      g_autofree char *most = bs_words_flatten_most (&by_work[i], stack->plan->units);
      why.title = bs_flatten_work_names[i];
      bs_number_row_show (self->works[i], &why, stack->plan->units, most);
    }
  g_autofree char *choice = bs_words_flatten_choice (by_work, stack->plan->units);
  gtk_label_set_text (self->choice, choice);
}

static const BsDeepSpots *
get_deep (BsFlatteningPage *self, int is_top)
{
  return is_top ? &self->map->deep_top : &self->map->deep_underside;
}

static void
show_spots (BsFlatteningPage *self)
{
  for (int is_top = 0; is_top <= 1; is_top++)
    {
      const BsDeepSpots *deep = get_deep (self, is_top);

      gtk_widget_set_visible (GTK_WIDGET (self->no_spots[is_top]), deep->n == 0);
      for (guint i = 0; i < BS_N_DEEP_SPOTS; i++)
        {
          GtkWidget *button = GTK_WIDGET (self->spots[is_top][i]);
          g_autofree char *text = NULL;

          gtk_widget_set_visible (button, i < deep->n);
          if (i >= deep->n)
            continue;
          text = bs_words_deep_spot (&deep->spots[i], get_stack (self));
          gtk_label_set_text (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), text);
        }
    }
}

static void
show_sures (BsFlatteningPage *self)
{
  const BsStack *stack = get_stack (self);
  BsUnitSystem units = stack->plan->units;
  const BsForecast *forecast = get_forecast (self);
  const BsFlattenOdds *odds = forecast != NULL ? &forecast->odds : NULL;
  const char *note = forecast == NULL ? _ ("working…") : NULL;
  BsWorking why;

  for (int i = 0; i < BS_N_SURE; i++)
    {
      bs_flatten_explain_odds (odds, (BsSure)i, stack, &why);
      bs_number_row_show (self->sures[i], &why, units, note);
    }
  bs_flatten_explain_wanted (odds, stack, &why);
  bs_number_row_show (self->sures[SURE_WANTED], &why, units, note);
  bs_flatten_explain_height (forecast != NULL ? &forecast->height_needed : NULL, stack, &why);
  bs_number_row_show (self->sures[SURE_HEIGHT], &why, units, note);
  gtk_widget_queue_draw (self->odds);
}

static void
show_planer (BsFlatteningPage *self)
{
  const BsStack *stack = get_stack (self);
  g_autofree char *words = bs_words_planer (stack);
  BsWorking why;

  bs_flatten_explain_packs (stack, &why);
  bs_number_row_show (self->packs, &why, stack->plan->units, NULL);
  gtk_label_set_text (self->planer_words, words);
  gtk_widget_set_visible (self->planer, stack->plan->slab.flatten_method == BS_FLATTEN_BY_PLANER);
}

static void
queue_profiles (BsFlatteningPage *self)
{
  for (gsize i = 0; i < G_N_ELEMENTS (self->profiles); i++)
    gtk_widget_queue_draw (self->profiles[i]);
}

static void
show_what_there_is (BsFlatteningPage *self, gboolean has_map)
{
  gtk_widget_set_visible (GTK_WIDGET (self->nothing), !has_map);
  gtk_widget_set_visible (GTK_WIDGET (self->maps), has_map);
  for (gsize i = 0; i < G_N_ELEMENTS (self->profiles); i++)
    gtk_widget_set_visible (self->profiles[i], has_map);
  for (gsize i = 0; i < G_N_ELEMENTS (self->numbers); i++)
    gtk_widget_set_visible (self->numbers[i], has_map);
}

static void
changed_cb (BsFlatteningPage *self)
{
  const BsResults *results = bs_session_get_results (self->session);
  const BsPlan *plan = results->stack->plan;
  BsFlattenMap *before = self->map;
  g_autofree char *steps = bs_words_flatten_steps (results);

  self->map = bs_flatten_map_new (results->stack, plan->slab.flatten_work, BS_REMOVAL_COLUMNS,
                                  BS_REMOVAL_ROWS);
  bs_removal_view_set_map (self->maps, self->map);
  g_clear_pointer (&before, bs_flatten_map_free);
  show_what_there_is (self, self->map->n_x > 0);
  queue_profiles (self);
  gtk_label_set_text (self->steps, steps);
  show_works (self);
  show_spots (self);
  show_sures (self);
  show_planer (self);
  bs_number_row_show (self->cup, &results->why_cup, plan->units, NULL);
  gtk_widget_set_visible (gtk_widget_get_parent (GTK_WIDGET (self->cup)),
                          plan->slab.layup == BS_LAYUP_ON_FLAT);
}

static void
spot_chosen_cb (GtkButton *button, BsFlatteningPage *self)
{
  const BsStack *stack = get_stack (self);

  for (int is_top = 0; is_top <= 1; is_top++)
    for (guint i = 0; i < BS_N_DEEP_SPOTS; i++)
      {
        const BsDeepSpots *deep = get_deep (self, is_top);
        const BsDeepSpot *spot = &deep->spots[i];

        if (self->spots[is_top][i] == button && i < deep->n)
          bs_session_select (self->session, stack->placed[spot->place].lamination->id);
      }
}

static GtkWidget *
new_block (const char *heading)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *label = gtk_label_new (heading);

  gtk_widget_add_css_class (label, "strong");
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_box_append (GTK_BOX (block), label);
  return block;
}

static BsNumberRow *
add_row (GtkWidget *block)
{
  GtkWidget *row = bs_number_row_new ();

  gtk_widget_set_size_request (row, ROW_WIDTH, -1);
  gtk_box_append (GTK_BOX (block), row);
  return BS_NUMBER_ROW (row);
}

static GtkLabel *
add_note (GtkWidget *block, const char *text)
{
  GtkWidget *note = bs_form_note_new (text);

  gtk_box_append (GTK_BOX (block), note);
  return GTK_LABEL (note);
}

static GtkWidget *
new_works_block (BsFlatteningPage *self)
{
  GtkWidget *block = new_block (_ ("How thick, by the order of work"));

  for (int i = 0; i < BS_N_FLATTEN_WORKS; i++)
    self->works[i] = add_row (block);
  self->choice = add_note (block, NULL);
  return block;
}

static void
add_spots (BsFlatteningPage *self, GtkWidget *block, gboolean is_top)
{
  self->no_spots[is_top] = add_note (block, bs_words_no_deep_spot ());
  for (guint i = 0; i < BS_N_DEEP_SPOTS; i++)
    {
      GtkWidget *button = gtk_button_new (), *label = gtk_label_new (NULL);

      gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_button_set_child (GTK_BUTTON (button), label);
      gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
      gtk_accessible_update_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                      label, NULL, -1);
      gtk_box_append (GTK_BOX (block), button);
      self->spots[is_top][i] = GTK_BUTTON (button);
      g_signal_connect_object (button, "clicked", G_CALLBACK (spot_chosen_cb), self, 0);
    }
}

static GtkWidget *
new_spots_block (BsFlatteningPage *self)
{
  GtkWidget *block = new_block (_ ("Deepest spots of the show face"));
  GtkWidget *below = new_block (_ ("Deepest spots of the underside"));

  add_spots (self, block, TRUE);
  add_spots (self, below, FALSE);
  gtk_box_append (GTK_BOX (block), below);
  return block;
}

static GtkWidget *
new_fields_block (BsFlatteningPage *self)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_box_append (GTK_BOX (block), bs_flattening_work_form_new (self->session));
  self->steps = add_note (block, NULL);
  gtk_box_append (GTK_BOX (block), bs_flattening_uncertainty_form_new (self->session));
  return block;
}

static GtkWidget *
new_sure_block (BsFlatteningPage *self)
{
  GtkWidget *block = new_block (_ ("How sure"));

  self->odds = gtk_drawing_area_new ();
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->odds), draw_odds_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->odds), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How thick the drawn slabs come out; told in numbers below"),
                                  -1);
  gtk_box_append (GTK_BOX (block), self->odds);
  for (int i = 0; i < N_SURE_ROWS; i++)
    self->sures[i] = add_row (block);
  return block;
}

static GtkWidget *
new_planer_block (BsFlatteningPage *self)
{
  self->planer = new_block (_ ("Through the planer"));
  self->packs = add_row (self->planer);
  self->planer_words = add_note (self->planer, NULL);
  return self->planer;
}

static GtkWidget *
new_profile (BsFlatteningPage *self, BsProfile profile)
{
  GtkWidget *area = gtk_drawing_area_new ();

  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area),
                                  profile == BS_PROFILE_ACROSS ? draw_across_cb : draw_along_cb,
                                  self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  profile == BS_PROFILE_ACROSS
                                      ? _ ("Rough and finished slab, cut across")
                                      : _ ("Rough and finished slab, cut along"),
                                  -1);
  self->profiles[profile] = area;
  return area;
}

/* Heights of the pictures follow the text, which is known when the style is. */
static void
bs_flattening_page_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  BsFlatteningPage *self = BS_FLATTENING_PAGE (widget);
  double text = bs_appearance_find_text_size (widget);

  GTK_WIDGET_CLASS (bs_flattening_page_parent_class)->css_changed (widget, change);
  if (self->page == NULL)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (self->profiles); i++)
    gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->profiles[i]),
                                         (int)ceil (BS_PROFILE_HEIGHT * text));
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->odds),
                                       (int)ceil (BS_ODDS_HEIGHT * text));
}

static void
bs_flattening_page_dispose (GObject *object)
{
  BsFlatteningPage *self = BS_FLATTENING_PAGE (object);

  g_clear_pointer (&self->page, gtk_widget_unparent);
  g_clear_pointer (&self->map, bs_flatten_map_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_flattening_page_parent_class)->dispose (object);
}

static void
bs_flattening_page_class_init (BsFlatteningPageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_flattening_page_dispose;
  widget_class->css_changed = bs_flattening_page_css_changed;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
bs_flattening_page_init (BsFlatteningPage *self)
{
}

static void
fill_page (BsFlatteningPage *self)
{
  GtkWidget *cup = new_block (_ ("When the wood moves"));

  self->page = bs_page_new ();
  self->nothing = GTK_LABEL (bs_form_note_new (
      _ ("Nothing to flatten yet: there is no lamination in the slab, or one without a size.")));
  self->maps = BS_REMOVAL_VIEW (bs_removal_view_new (self->session));
  self->cup = add_row (cup);
  bs_page_add_wide (self->page, GTK_WIDGET (self->nothing));
  bs_page_add_wide (self->page, GTK_WIDGET (self->maps));
  self->numbers[0] = new_works_block (self);
  self->numbers[1] = new_spots_block (self);
  self->numbers[2] = new_sure_block (self);
  bs_page_add (self->page, self->numbers[0]);
  bs_page_add (self->page, self->numbers[1]);
  bs_page_add_wide (self->page, new_profile (self, BS_PROFILE_ACROSS));
  bs_page_add_wide (self->page, new_profile (self, BS_PROFILE_ALONG));
  bs_page_add (self->page, self->numbers[2]);
  bs_page_add (self->page, new_fields_block (self));
  bs_page_add (self->page, new_planer_block (self));
  bs_page_add (self->page, cup);
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
}

GtkWidget *
bs_flattening_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsFlatteningPage *self = g_object_new (BS_TYPE_FLATTENING_PAGE, NULL);
  self->session = g_object_ref (session);
  fill_page (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (queue_profiles), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (bs_session_get_study (session, &bs_study_forecast), "changed",
                           G_CALLBACK (show_sures), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
