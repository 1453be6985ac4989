/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-line.h"

struct _BsRackLine
{
  GtkWidget parent_instance;

  const BsRackSpan *spans; /* borrowed */
};

G_DEFINE_FINAL_TYPE (BsRackLine, bs_rack_line, GTK_TYPE_WIDGET)

/* The table knows how wide it is. */
static void
bs_rack_line_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int height = 0;
      gtk_widget_measure (child, orientation, -1, &height, NULL, NULL, NULL);
      *minimum = *natural = MAX (*minimum, height);
    }
}

static void
bs_rack_line_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  const BsRackSpan *span = BS_RACK_LINE (widget)->spans;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child), span++)
    gtk_widget_size_allocate (child, &(GtkAllocation){ span->x, 0, span->width, height }, -1);
}

static void
bs_rack_line_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_rack_line_parent_class)->dispose (object);
}

static void
bs_rack_line_class_init (BsRackLineClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_rack_line_dispose;
  widget_class->measure = bs_rack_line_measure;
  widget_class->size_allocate = bs_rack_line_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "rackline");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ROW);
}

static void
bs_rack_line_init (BsRackLine *self)
{
}

GtkWidget *
bs_rack_line_new (const BsRackSpan *spans, const char *css_class)
{
  BsRackLine *self = g_object_new (BS_TYPE_RACK_LINE, NULL);

  self->spans = spans;
  gtk_widget_add_css_class (GTK_WIDGET (self), css_class);
  return GTK_WIDGET (self);
}

void
bs_rack_line_append (BsRackLine *self, GtkWidget *widget)
{
  g_return_if_fail (BS_IS_RACK_LINE (self));

  gtk_widget_set_parent (widget, GTK_WIDGET (self));
}

GtkWidget *
bs_rack_line_get (BsRackLine *self, int column)
{
  g_return_val_if_fail (BS_IS_RACK_LINE (self), NULL);

  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));
  while (child != NULL && column-- > 0)
    child = gtk_widget_get_next_sibling (child);
  return child;
}
