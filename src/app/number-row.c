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

static char *
format_spread (const BsWorking *working, BsUnitSystem units)
{
  if (isnan (working->low) || isnan (working->high))
    return g_strdup ("");
  g_autofree char *low = bs_units_format_number (working->low, working->quantity, units);
  g_autofree char *high = bs_units_format_number (working->high, working->quantity, units);
  /* Translators: the range that a number may well have: "86.9 to 88.4". */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

void
bs_number_row_show (BsNumberRow *self, const BsWorking *working, BsUnitSystem units)
{
  g_return_if_fail (BS_IS_NUMBER_ROW (self));

  const char *title = working->title != NULL ? _ (working->title) : "";
  g_autofree char *value = bs_units_format (working->value, working->quantity, units);
  g_autofree char *spread = format_spread (working, units);
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
