/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/number-row.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/resources.h"
#include "core/units.h"
#include "words/words.h"

struct _BsNumberRow
{
  GtkWidget parent_instance;

  BsWorking working;
  BsUnitSystem units;
  /* template */
  GtkLabel *title;
  GtkLabel *value;
  GtkLabel *spread;
  GtkLabel *working_label;
  GtkMenuButton *why;
};

G_DEFINE_FINAL_TYPE (BsNumberRow, bs_number_row, GTK_TYPE_WIDGET)

/* The working is long: it is written only when it is asked for. */
static void
show_working (BsNumberRow *self)
{
  g_autofree char *text = NULL;

  if (!gtk_widget_get_visible (GTK_WIDGET (gtk_menu_button_get_popover (self->why))))
    return;
  text = bs_words_working (&self->working, self->units);
  gtk_label_set_text (self->working_label, text);
}

static void
why_opened_cb (BsNumberRow *self)
{
  g_assert (BS_IS_NUMBER_ROW (self));

  show_working (self);
}

static void
set_text (GtkLabel *label, const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text) != 0)
    gtk_label_set_text (label, text);
}

/* Three lines: the title; the number, with the button at its right; the spread, which stands beside
 * the number where there is room. */

#define SPACE 6

static int
measure_part (gpointer part, GtkOrientation orientation)
{
  int least, natural;

  gtk_widget_measure (GTK_WIDGET (part), orientation, -1, &least, &natural, NULL, NULL);
  return orientation == GTK_ORIENTATION_HORIZONTAL && GTK_IS_LABEL (part) ? natural : least;
}

static int
measure_number_line (BsNumberRow *self)
{
  return measure_part (self->value, GTK_ORIENTATION_HORIZONTAL) + SPACE
         + measure_part (self->why, GTK_ORIENTATION_HORIZONTAL);
}

static gboolean
has_room_beside (BsNumberRow *self, int width)
{
  return width >= measure_number_line (self) + SPACE
                      + measure_part (self->spread, GTK_ORIENTATION_HORIZONTAL);
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

  if (orientation == GTK_ORIENTATION_VERTICAL)
    *minimum = measure_height (self, for_size);
  else
    *minimum = MAX (measure_number_line (self), measure_part (self->spread, orientation));
  *natural = *minimum;
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
  int value = measure_part (self->value, GTK_ORIENTATION_HORIZONTAL);
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
  widget_class->measure = bs_number_row_measure;
  widget_class->size_allocate = bs_number_row_size_allocate;

  gtk_widget_class_set_template_from_resource (widget_class, BS_RESOURCES "/number-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, spread);
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, title);
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, value);
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, why);
  gtk_widget_class_bind_template_child (widget_class, BsNumberRow, working_label);
  gtk_widget_class_bind_template_callback (widget_class, why_opened_cb);

  gtk_widget_class_set_css_name (widget_class, "numberrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bs_number_row_init (BsNumberRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
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
  g_autofree char *low = bs_units_format (working->low, working->quantity, units);
  g_autofree char *high = bs_units_format (working->high, working->quantity, units);
  if (working->quantity != BS_QUANTITY_TIME && g_str_equal (find_unit (low), find_unit (high)))
    low[find_unit (low) - low] = '\0';
  /* Translators: the range that a number may well have: "86.9 to 88.4 mm". */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

void
bs_number_row_show (BsNumberRow *self, const BsWorking *working, BsUnitSystem units,
                    const char *note)
{
  g_return_if_fail (BS_IS_NUMBER_ROW (self));

  const char *title = working->title != NULL ? _ (working->title) : "";
  g_autofree char *value = bs_units_format (working->value, working->quantity, units);
  g_autofree char *spread = note != NULL ? g_strdup (note) : format_spread (working, units);
  g_autofree char *label = g_strdup_printf ("%s: %s", title, value);

  self->working = *working;
  self->units = units;
  set_text (self->title, title);
  set_text (self->value, value);
  set_text (self->spread, spread);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->why), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  title, -1);
  show_working (self);
}
