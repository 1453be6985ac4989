/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/number-row.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/resources.h"
#include "words/words.h"

struct _BsNumberRow
{
  GtkWidget parent_instance;

  BsWorking working;
  BsUnitSystem units;
  int value_width, spread_width; /* that their texts have needed so far, in pixels */
  gboolean is_measured;          /* the texts as they are now */
  /* template */
  GtkLabel *title;
  GtkInscription *value;
  GtkInscription *spread;
  GtkMenuButton *why;
  /* borrowed: in the popover of `why`, once that was opened */
  GtkLabel *working_label;
};

G_DEFINE_FINAL_TYPE (BsNumberRow, bs_number_row, GTK_TYPE_WIDGET)

static void
show_working (BsNumberRow *self)
{
  g_autofree char *text = bs_words_working (&self->working, self->units);

  gtk_label_set_text (self->working_label, text);
}

static GtkWidget *
popover_new (GtkLabel *label)
{
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_label_set_selectable (label, TRUE);
  gtk_widget_set_can_focus (GTK_WIDGET (label), FALSE); /* or all of it is selected at once */
  gtk_label_set_wrap (label, TRUE);
  gtk_label_set_xalign (label, 0.0f);
  gtk_label_set_width_chars (label, 48);
  gtk_label_set_max_width_chars (label, 64);
  gtk_widget_add_css_class (GTK_WIDGET (label), "working");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 420);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (label));
  gtk_popover_set_child (GTK_POPOVER (popover), scroller);
  return popover;
}

/* Only when it is asked for: the working is long. */
static void
why_asked_cb (GtkMenuButton *why, gpointer user_data)
{
  BsNumberRow *self = user_data;

  if (self->working_label == NULL)
    {
      self->working_label = GTK_LABEL (gtk_label_new (NULL));
      gtk_menu_button_set_popover (why, popover_new (self->working_label));
    }
  show_working (self);
}

static int
find_text_width (GtkInscription *inscription)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (
      GTK_WIDGET (inscription), gtk_inscription_get_text (inscription));
  int width;

  pango_layout_get_pixel_size (layout, &width, NULL);
  return width;
}

/* The places of the texts only ever grow, so that nothing jumps about while numbers change. */
static gboolean
grow_places (BsNumberRow *self)
{
  if (self->is_measured)
    return FALSE;

  int value = find_text_width (self->value), spread = find_text_width (self->spread);
  gboolean has_grown = value > self->value_width || spread > self->spread_width;
  self->value_width = MAX (self->value_width, value);
  self->spread_width = MAX (self->spread_width, spread);
  self->is_measured = TRUE;
  return has_grown;
}

static void
bs_number_row_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (bs_number_row_parent_class)->css_changed (widget, change);
  BS_NUMBER_ROW (widget)->is_measured = FALSE; /* the letters may have another size */
}

/* Three lines: the title; the number, with the button at its right; the spread, which stands beside
 * the number where there is room. */

#define SPACE 6

static int
measure_part (gpointer part, GtkOrientation orientation)
{
  int least;

  gtk_widget_measure (GTK_WIDGET (part), orientation, -1, &least, NULL, NULL, NULL);
  return least;
}

static int
measure_number_line (BsNumberRow *self)
{
  return self->value_width + SPACE + measure_part (self->why, GTK_ORIENTATION_HORIZONTAL);
}

static gboolean
has_room_beside (BsNumberRow *self, int width)
{
  return width >= measure_number_line (self) + SPACE + self->spread_width;
}

static GtkSizeRequestMode
bs_number_row_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static int
measure_height (BsNumberRow *self, int width)
{
  int title = measure_part (self->title, GTK_ORIENTATION_VERTICAL);
  int number = MAX (measure_part (self->value, GTK_ORIENTATION_VERTICAL),
                    measure_part (self->why, GTK_ORIENTATION_VERTICAL));
  int spread = measure_part (self->spread, GTK_ORIENTATION_VERTICAL);

  return title + number + (width >= 0 && has_room_beside (self, width) ? 0 : spread);
}

static void
bs_number_row_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsNumberRow *self = BS_NUMBER_ROW (widget);
  int title;

  grow_places (self);
  if (orientation == GTK_ORIENTATION_VERTICAL)
    *minimum = measure_height (self, for_size);
  else
    *minimum = MAX (measure_number_line (self), self->spread_width);
  *natural = *minimum;
  if (orientation == GTK_ORIENTATION_HORIZONTAL) /* the title is cut off where it must be */
    {
      gtk_widget_measure (GTK_WIDGET (self->title), orientation, -1, NULL, &title, NULL, NULL);
      *natural = MAX (*natural, title);
    }
}

static void
allocate_part (gpointer part, int x, int y, int width, int height)
{
  gtk_widget_size_allocate (GTK_WIDGET (part), &(GtkAllocation){ x, y, width, height }, -1);
}

static void
bs_number_row_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsNumberRow *self = BS_NUMBER_ROW (widget);
  int title = measure_part (self->title, GTK_ORIENTATION_VERTICAL);
  int value = self->value_width;
  int why = measure_part (self->why, GTK_ORIENTATION_HORIZONTAL);
  int why_height = measure_part (self->why, GTK_ORIENTATION_VERTICAL);
  int spread_height = measure_part (self->spread, GTK_ORIENTATION_VERTICAL);
  int number = MAX (measure_part (self->value, GTK_ORIENTATION_VERTICAL), why_height);

  allocate_part (self->title, 0, 0, width, title);
  allocate_part (self->value, 0, title, value, number);
  allocate_part (self->why, width - why, title + (number - why_height) / 2, why, why_height);
  if (has_room_beside (self, width))
    allocate_part (self->spread, value + SPACE, title, width - value - why - 2 * SPACE, number);
  else
    allocate_part (self->spread, 0, title + number, width, spread_height);
}

static void
bs_number_row_dispose (GObject *object)
{
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL;)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_number_row_parent_class)->dispose (object);
}

static void
bs_number_row_class_init (BsNumberRowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_number_row_dispose;

  widget_class->get_request_mode = bs_number_row_get_request_mode;
  widget_class->css_changed = bs_number_row_css_changed;
  widget_class->measure = bs_number_row_measure;
  widget_class->size_allocate = bs_number_row_size_allocate;

  gtk_widget_class_set_template_from_resource (widget_class, BS_RESOURCES "/number-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, spread);
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, title);
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, value);
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, why);

  gtk_widget_class_set_css_name (widget_class, "numberrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bs_number_row_init (BsNumberRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_menu_button_set_create_popup_func (self->why, why_asked_cb, self, NULL);
}

GtkWidget *
bs_number_row_new (void)
{
  return g_object_new (BS_TYPE_NUMBER_ROW, NULL);
}

/* Where the unit of a number in words begins: after its last space, of whatever width. */
static const char *
find_unit (const char *text)
{
  const char *unit = text;

  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    if (g_unichar_isspace (g_utf8_get_char (c)))
      unit = c;
  return unit;
}

static char *
format_spread (const BsWorking *working, BsUnitSystem units)
{
  if (isnan (working->low) || isnan (working->high))
    return g_strdup ("");
  g_autofree char *low = bs_words_value (working, working->low, working->quantity, units);
  g_autofree char *high = bs_words_value (working, working->high, working->quantity, units);
  if (g_str_equal (low, high))
    return g_strdup ("");
  if (working->quantity != BS_QUANTITY_TIME && g_str_equal (find_unit (low), find_unit (high)))
    low[find_unit (low) - low] = '\0';
  /* Translators: the range that a number may well have: "86.9 to 88.4 mm". */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static void
set_numbers (BsNumberRow *self, const char *title, const char *value, const char *spread)
{
  /* Translators: what a number is, and the number: "Pressing force: 68.8 kN". */
  g_autofree char *label = g_strdup_printf (_ ("%s: %s"), title, value);
  /* Translators: a button, read out: "Why: Pressing force". */
  g_autofree char *why = g_strdup_printf (_ ("Why: %s"), title);

  gtk_inscription_set_text (self->value, value);
  gtk_inscription_set_text (self->spread, spread);
  self->is_measured = FALSE;
  if (gtk_widget_get_width (GTK_WIDGET (self)) > 0 && grow_places (self))
    gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self->why))),
      GTK_ACCESSIBLE_PROPERTY_LABEL, why, -1);
}

void
bs_number_row_show (BsNumberRow *self, const BsWorking *working, BsUnitSystem units,
                    const char *note)
{
  g_return_if_fail (BS_IS_NUMBER_ROW (self));

  const char *title = working->title != NULL ? _ (working->title) : "";
  g_autofree char *value = bs_words_value (working, working->value, working->quantity, units);
  g_autofree char *spread = note != NULL ? g_strdup (note) : format_spread (working, units);

  if (isnan (self->working.value) != isnan (working->value)) /* a number comes or goes: no jump */
    self->value_width = self->spread_width = 0;
  self->working = *working;
  self->working.currency = g_intern_string (working->currency); /* the plan may go */
  self->units = units;
  if (g_strcmp0 (gtk_label_get_text (self->title), title) != 0)
    gtk_label_set_text (self->title, title);
  if (g_strcmp0 (gtk_inscription_get_text (self->value), value) != 0
      || g_strcmp0 (gtk_inscription_get_text (self->spread), spread) != 0)
    set_numbers (self, title, value, spread);
  if (self->working_label != NULL && gtk_widget_get_mapped (GTK_WIDGET (self->working_label)))
    show_working (self);
}
