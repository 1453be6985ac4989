/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-cell.h"

#include <math.h>

struct _BsRackCell
{
  GtkWidget parent_instance;

  GtkWidget *entry; /* GtkText, while it is edited */

  /* owned */
  char *title;
  char *text;
  PangoLayout *layout; /* of the text; NULL: to be made */

  /* borrowed */
  BsRackRow *row;

  guint position; /* of the row */
  int column;
  int n_chars;
  BsRackCellLook look;
};

enum
{
  LEFT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsRackCell, bs_rack_cell, GTK_TYPE_WIDGET)

static PangoLayout *
get_layout (BsRackCell *self)
{
  if (self->layout != NULL)
    return self->layout;
  self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), self->text);
  pango_layout_set_single_paragraph_mode (self->layout, TRUE);
  pango_layout_set_ellipsize (self->layout, PANGO_ELLIPSIZE_END);
  if (self->look & BS_RACK_CELL_NUMBER)
    pango_layout_set_alignment (self->layout, PANGO_ALIGN_RIGHT);
  if (self->look & BS_RACK_CELL_WRONG)
    {
      g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();
      pango_attr_list_insert (attributes, pango_attr_underline_new (PANGO_UNDERLINE_ERROR));
      pango_layout_set_attributes (self->layout, attributes);
    }
  return self->layout;
}

/* The same for every text, so that no cell is laid out anew when one changes. */
static void
bs_rack_cell_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsRackCell *self = BS_RACK_CELL (widget);
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      int digit = PANGO_PIXELS_CEIL (pango_font_metrics_get_approximate_digit_width (metrics));
      *minimum = *natural = self->n_chars * digit;
    }
  else
    *minimum = *natural = PANGO_PIXELS_CEIL (pango_font_metrics_get_height (metrics)) + 6;
  pango_font_metrics_unref (metrics);
}

static void
bs_rack_cell_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsRackCell *self = BS_RACK_CELL (widget);

  int natural = 0;

  if (self->entry == NULL)
    return;
  gtk_widget_measure (self->entry, GTK_ORIENTATION_VERTICAL, -1, NULL, &natural, NULL, NULL);
  gtk_widget_size_allocate (self->entry,
                            &(GtkAllocation){ 0, (height - natural) / 2, width, natural }, -1);
}

static void
bs_rack_cell_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsRackCell *self = BS_RACK_CELL (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget), text = 0;

  if (self->entry != NULL)
    {
      gtk_widget_snapshot_child (widget, self->entry, snapshot);
      return;
    }
  if (self->text == NULL || *self->text == '\0')
    return;
  PangoLayout *layout = get_layout (self);
  pango_layout_set_width (layout, width * PANGO_SCALE);
  pango_layout_get_pixel_size (layout, NULL, &text);
  gtk_snapshot_render_layout (snapshot, gtk_widget_get_style_context (widget), 0.0,
                              floor (0.5 * (height - text)), layout);
}

static void
bs_rack_cell_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (bs_rack_cell_parent_class)->css_changed (widget, change);
  g_clear_object (&BS_RACK_CELL (widget)->layout);
}

static void
bs_rack_cell_dispose (GObject *object)
{
  BsRackCell *self = BS_RACK_CELL (object);

  g_clear_pointer (&self->entry, gtk_widget_unparent);
  g_clear_object (&self->layout);
  G_OBJECT_CLASS (bs_rack_cell_parent_class)->dispose (object);
}

static void
bs_rack_cell_finalize (GObject *object)
{
  BsRackCell *self = BS_RACK_CELL (object);

  g_free (self->title);
  g_free (self->text);
  G_OBJECT_CLASS (bs_rack_cell_parent_class)->finalize (object);
}

static void
bs_rack_cell_class_init (BsRackCellClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_rack_cell_dispose;
  object_class->finalize = bs_rack_cell_finalize;
  widget_class->measure = bs_rack_cell_measure;
  widget_class->size_allocate = bs_rack_cell_size_allocate;
  widget_class->snapshot = bs_rack_cell_snapshot;
  widget_class->css_changed = bs_rack_cell_css_changed;

  signals[LEFT] = g_signal_new ("left", BS_TYPE_RACK_CELL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);

  gtk_widget_class_set_css_name (widget_class, "rackcell");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GRID_CELL);
}

static void
bs_rack_cell_init (BsRackCell *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
bs_rack_cell_new (int column, int n_chars)
{
  BsRackCell *self = g_object_new (BS_TYPE_RACK_CELL, NULL);

  self->column = column;
  self->n_chars = n_chars;
  return GTK_WIDGET (self);
}

int
bs_rack_cell_get_column (BsRackCell *self)
{
  g_return_val_if_fail (BS_IS_RACK_CELL (self), -1);

  return self->column;
}

void
bs_rack_cell_set_place (BsRackCell *self, BsRackRow *row, guint position)
{
  g_return_if_fail (BS_IS_RACK_CELL (self));

  self->row = row;
  self->position = position;
}

BsRackRow *
bs_rack_cell_get_row (BsRackCell *self)
{
  g_return_val_if_fail (BS_IS_RACK_CELL (self), NULL);

  return self->row;
}

guint
bs_rack_cell_get_position (BsRackCell *self)
{
  g_return_val_if_fail (BS_IS_RACK_CELL (self), G_MAXUINT);

  return self->position;
}

static void
name_it (BsRackCell *self, const char *problem)
{
  g_autofree char *name = g_strjoin (": ", self->title, self->text, problem, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/* To set a tooltip, even to none, asks the display where the pointer is and waits for the answer.
 */
static void
show_problem (BsRackCell *self, const char *problem)
{
  if (g_strcmp0 (gtk_widget_get_tooltip_text (GTK_WIDGET (self)), problem) == 0)
    return;
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), problem);
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_INVALID,
      problem != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

void
bs_rack_cell_show (BsRackCell *self, const char *title, const char *text, BsRackCellLook look,
                   const char *problem)
{
  g_return_if_fail (BS_IS_RACK_CELL (self));

  if (g_strcmp0 (self->title, title) == 0 && g_strcmp0 (self->text, text) == 0 && self->look == look
      && problem == NULL)
    return;
  g_free (self->title);
  g_free (self->text);
  self->title = g_strdup (title);
  self->text = g_strdup (text);
  self->look = look;
  g_clear_object (&self->layout);
  if (look & BS_RACK_CELL_FAINT)
    gtk_widget_add_css_class (GTK_WIDGET (self), "faint");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "faint");
  show_problem (self, problem);
  name_it (self, problem);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
entry_left_cb (BsRackCell *self, GtkEventControllerFocus *focus)
{
  if (self->entry != NULL)
    g_signal_emit (self, signals[LEFT], 0);
}

void
bs_rack_cell_edit (BsRackCell *self, const char *text)
{
  g_return_if_fail (BS_IS_RACK_CELL (self));

  if (self->entry != NULL)
    return;
  GtkEventController *focus = gtk_event_controller_focus_new ();
  self->entry = gtk_text_new ();
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text != NULL ? text : self->text);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 1);
  if (self->look & BS_RACK_CELL_NUMBER)
    gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 1.0f);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->title, -1);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (entry_left_cb), self);
  gtk_widget_add_controller (self->entry, focus);
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
  gtk_widget_add_css_class (GTK_WIDGET (self), "edited");
  gtk_widget_grab_focus (self->entry); /* which selects all */
  if (text != NULL)
    gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
}

gboolean
bs_rack_cell_is_edited (BsRackCell *self)
{
  g_return_val_if_fail (BS_IS_RACK_CELL (self), FALSE);

  return self->entry != NULL;
}

const char *
bs_rack_cell_get_typed (BsRackCell *self)
{
  g_return_val_if_fail (BS_IS_RACK_CELL (self), NULL);

  return self->entry != NULL ? gtk_editable_get_text (GTK_EDITABLE (self->entry)) : NULL;
}

GtkWidget *
bs_rack_cell_get_entry (BsRackCell *self)
{
  g_return_val_if_fail (BS_IS_RACK_CELL (self), NULL);

  return self->entry;
}

void
bs_rack_cell_end_edit (BsRackCell *self)
{
  g_return_if_fail (BS_IS_RACK_CELL (self));

  GtkWidget *entry = g_steal_pointer (&self->entry);
  if (entry == NULL)
    return;
  /* First: an entry that takes the focus with it has every widget of the window styled anew. */
  if (gtk_widget_has_focus (entry))
    gtk_widget_grab_focus (GTK_WIDGET (self));
  gtk_widget_unparent (entry);
  gtk_widget_remove_css_class (GTK_WIDGET (self), "edited");
}
