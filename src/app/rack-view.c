/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-view.h"

#include <math.h>

#include "app/rack-line.h"

#define NOWHERE G_MAXUINT

/* A row that has widgets. */
typedef struct
{
  GtkWidget *widget; /* BsRackLine, borrowed */
  BsRackRow *row;    /* owned; NULL: it had none yet */
  gulong changed;    /* handler */
  guint position;    /* NOWHERE: it waits to be used again */
} Line;

struct _BsRackView
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *head; /* BsRackLine */

  /* owned */
  GtkSelectionModel *rows;
  GtkAdjustment *adjustments[2]; /* by GtkOrientation */
  GArray *lines;                 /* Line */
  BsRackSpan *spans;

  /* borrowed */
  const BsRackColumn *columns;
  const BsRackCellKind *kind;
  gpointer owner;

  GtkScrollablePolicy policies[2];
  int n_columns;
  int head_height, row_height;
  guint anchor; /* where a range of chosen rows begins */
};

enum
{
  PROP_0,
  PROP_HADJUSTMENT,
  PROP_VADJUSTMENT,
  PROP_HSCROLL_POLICY,
  PROP_VSCROLL_POLICY
};

enum
{
  ENTERED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE_WITH_CODE (BsRackView, bs_rack_view, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_SCROLLABLE, NULL))

static guint
count_items (BsRackView *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (self->rows));
}

static Line *
get_line (BsRackView *self, guint i)
{
  return &g_array_index (self->lines, Line, i);
}

/* The one for a row, or NULL. */
static Line *
find_line (BsRackView *self, guint position)
{
  for (guint i = 0; i < self->lines->len; i++)
    if (get_line (self, i)->position == position)
      return get_line (self, i);
  return NULL;
}

static BsRackCell *
get_cell (const Line *line, int column)
{
  return BS_RACK_CELL (bs_rack_line_get (BS_RACK_LINE (line->widget), column));
}

/* The one that has the focus keeps it, in sight or not: someone may be typing there. */
static Line *
find_focused (BsRackView *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  GtkWidget *widget = focus != NULL ? gtk_widget_get_ancestor (focus, BS_TYPE_RACK_LINE) : NULL;

  for (guint i = 0; widget != NULL && i < self->lines->len; i++)
    if (get_line (self, i)->widget == widget && get_line (self, i)->position != NOWHERE)
      return get_line (self, i);
  return NULL;
}

/* Rows and their widgets. */

static void
show_row (BsRackView *self, const Line *line)
{
  for (int column = 0; column < self->n_columns; column++)
    self->kind->show (self->owner, get_cell (line, column));
}

static void
row_changed_cb (BsRackRow *row, BsRackView *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    if (get_line (self, i)->row == row && get_line (self, i)->position != NOWHERE)
      show_row (self, get_line (self, i));
}

static void
show_selected (BsRackView *self, const Line *line)
{
  gboolean is_selected = gtk_selection_model_is_selected (self->rows, line->position);

  if (is_selected)
    gtk_widget_set_state_flags (line->widget, GTK_STATE_FLAG_SELECTED, FALSE);
  else
    gtk_widget_unset_state_flags (line->widget, GTK_STATE_FLAG_SELECTED);
  gtk_accessible_update_state (GTK_ACCESSIBLE (line->widget), GTK_ACCESSIBLE_STATE_SELECTED,
                               is_selected, -1);
}

static void
forget_row (Line *line)
{
  if (line->row != NULL)
    g_clear_signal_handler (&line->changed, line->row);
  g_clear_object (&line->row);
}

static void
put_away (BsRackView *self, Line *line)
{
  for (int column = 0; column < self->n_columns; column++)
    {
      bs_rack_cell_end_edit (get_cell (line, column));
      bs_rack_cell_set_place (get_cell (line, column), NULL, NOWHERE);
    }
  forget_row (line);
  line->position = NOWHERE;
  gtk_widget_set_visible (line->widget, FALSE);
}

/* Read out as what it is in the list: 1 the first. */
static void
name_line (const Line *line, guint position)
{
  g_autofree char *name = g_strdup_printf ("%u", position + 1);

  gtk_accessible_update_property (GTK_ACCESSIBLE (line->widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
}

static void
bind_line (BsRackView *self, Line *line, guint position)
{
  g_autoptr (BsRackRow) row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);
  gboolean is_other = row != line->row;

  if (is_other)
    {
      forget_row (line);
      line->row = g_object_ref (row);
      line->changed = g_signal_connect (row, "changed", G_CALLBACK (row_changed_cb), self);
    }
  if (line->position != position)
    name_line (line, position);
  line->position = position;
  for (int column = 0; column < self->n_columns; column++)
    {
      if (is_other)
        bs_rack_cell_end_edit (get_cell (line, column));
      bs_rack_cell_set_place (get_cell (line, column), row, position);
    }
  if (is_other)
    show_row (self, line);
  show_selected (self, line);
  gtk_widget_set_visible (line->widget, TRUE);
}

static Line *
add_line (BsRackView *self)
{
  Line line = { .widget = bs_rack_line_new (self->spans, "row"), .position = NOWHERE };

  for (int column = 0; column < self->n_columns; column++)
    {
      GtkWidget *cell = bs_rack_cell_new (column, self->columns[column].n_chars);
      gtk_widget_set_focusable (cell, !self->columns[column].is_for_show);
      g_signal_connect_swapped (cell, "left", G_CALLBACK (self->kind->left), self->owner);
      bs_rack_line_append (BS_RACK_LINE (line.widget), cell);
    }
  gtk_widget_set_parent (line.widget, GTK_WIDGET (self));
  g_array_append_val (self->lines, line);
  return get_line (self, self->lines->len - 1);
}

static Line *
take_line (BsRackView *self)
{
  Line *free_line = find_line (self, NOWHERE);

  return free_line != NULL ? free_line : add_line (self);
}

static int
get_body_height (BsRackView *self)
{
  return MAX (gtk_widget_get_height (GTK_WIDGET (self)) - self->head_height, 0);
}

static guint
get_first (BsRackView *self)
{
  double value = gtk_adjustment_get_value (self->adjustments[GTK_ORIENTATION_VERTICAL]);

  return (guint)ceil (value / self->row_height - 1e-6);
}

/* The rows in sight get widgets, those that are no longer lend theirs. */
static void
fill (BsRackView *self)
{
  guint first = get_first (self), n = count_items (self);
  guint last = MIN (first + (guint)(get_body_height (self) / self->row_height) + 1, n);
  const Line *focused = find_focused (self);
  guint kept = focused != NULL ? focused->position : NOWHERE;

  for (guint i = 0; i < self->lines->len; i++)
    {
      Line *line = get_line (self, i);
      if (line->position != NOWHERE && (line->position < first || line->position >= last)
          && line->position != kept)
        line->position = NOWHERE;
    }
  for (guint position = first; position < last; position++)
    if (find_line (self, position) == NULL)
      bind_line (self, take_line (self), position);
  for (guint i = 0; i < self->lines->len; i++)
    if (get_line (self, i)->position == NOWHERE && get_line (self, i)->row != NULL)
      put_away (self, get_line (self, i));
}

/* What has the focus is what is chosen, also when another row came to stand there. */
static void
follow_focus (BsRackView *self)
{
  const Line *focused = find_focused (self);

  if (focused != NULL && !gtk_selection_model_is_selected (self->rows, focused->position))
    bs_rack_view_select (self, focused->position, FALSE, FALSE);
}

static void
items_changed_cb (BsRackView *self, guint position, guint removed, guint added)
{
  Line *focused = find_focused (self);
  guint n = count_items (self);

  /* The focus stays at its place, as in a column of figures. */
  if (focused != NULL)
    focused->position = MIN (focused->position, n - 1);
  for (guint i = 0; i < self->lines->len; i++)
    {
      Line *line = get_line (self, i);
      if (line->position >= n
          || (line != focused && focused != NULL && line->position == focused->position))
        line->position = NOWHERE;
      else
        bind_line (self, line, line->position);
    }
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  fill (self);
  if (focused != NULL)
    follow_focus (self);
}

static void
selection_changed_cb (BsRackView *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    if (get_line (self, i)->position != NOWHERE)
      show_selected (self, get_line (self, i));
}

/* Layout. */

static int
measure_child (GtkWidget *child, GtkOrientation orientation)
{
  int size = 0;

  gtk_widget_measure (child, orientation, -1, &size, NULL, NULL, NULL);
  return size;
}

/* Its title, or what it has room for. */
static int
measure_column (BsRackView *self, int column)
{
  GtkWidget *title = bs_rack_line_get (BS_RACK_LINE (self->head), column);
  GtkWidget *cell = GTK_WIDGET (get_cell (get_line (self, 0), column));

  return MAX (measure_child (title, GTK_ORIENTATION_HORIZONTAL),
              measure_child (cell, GTK_ORIENTATION_HORIZONTAL));
}

static int
measure_columns (BsRackView *self)
{
  int width = 0;

  for (int column = 0; column < self->n_columns; column++)
    width += measure_column (self, column);
  return width;
}

static void
bs_rack_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsRackView *self = BS_RACK_VIEW (widget);

  *minimum = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *natural = measure_columns (self);
  else
    *natural = measure_child (self->head, orientation)
               + (int)MIN (count_items (self), 1000)
                     * measure_child (get_line (self, 0)->widget, orientation);
}

static void
span_columns (BsRackView *self, int width)
{
  int extra = width - measure_columns (self), x = 0;

  for (int column = 0; column < self->n_columns; column++)
    {
      BsRackSpan *span = &self->spans[column];
      span->x = x;
      span->width = measure_column (self, column) + (self->columns[column].is_wide ? extra : 0);
      x += span->width;
    }
}

static void
configure (BsRackView *self, GtkOrientation orientation, double size, double page, double step)
{
  GtkAdjustment *adjustment = self->adjustments[orientation];

  size = MAX (size, page);
  gtk_adjustment_configure (adjustment,
                            CLAMP (gtk_adjustment_get_value (adjustment), 0.0, size - page), 0.0,
                            size, step, MAX (page - step, step), page);
}

static void
configure_rows (BsRackView *self)
{
  configure (self, GTK_ORIENTATION_VERTICAL, (double)count_items (self) * self->row_height,
             get_body_height (self), self->row_height);
}

static void
bs_rack_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsRackView *self = BS_RACK_VIEW (widget);
  int whole = MAX (width, measure_columns (self));

  self->head_height = measure_child (self->head, GTK_ORIENTATION_VERTICAL);
  self->row_height = MAX (measure_child (get_line (self, 0)->widget, GTK_ORIENTATION_VERTICAL), 1);
  span_columns (self, whole);
  configure (self, GTK_ORIENTATION_HORIZONTAL, whole, width, 60.0);
  configure_rows (self);
  fill (self);

  int x = -(int)gtk_adjustment_get_value (self->adjustments[GTK_ORIENTATION_HORIZONTAL]);
  int first = (int)get_first (self);
  gtk_widget_size_allocate (self->head, &(GtkAllocation){ x, 0, whole, self->head_height }, -1);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const Line *line = get_line (self, i);
      int y = self->head_height + ((int)line->position - first) * self->row_height;
      if (line->position == NOWHERE)
        continue;
      /* A row above those in sight would lie over the titles. */
      gtk_widget_measure (line->widget, GTK_ORIENTATION_VERTICAL, -1, NULL, NULL, NULL, NULL);
      gtk_widget_size_allocate (
          line->widget,
          &(GtkAllocation){ x, y < self->head_height ? height : y, whole, self->row_height }, -1);
    }
}

/* Scrolling. */

static void
scrolled_cb (BsRackView *self)
{
  if (self->row_height > 0)
    fill (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
set_adjustment (BsRackView *self, GtkOrientation orientation, GtkAdjustment *adjustment)
{
  GtkAdjustment **place = &self->adjustments[orientation];

  if (adjustment == NULL)
    adjustment = gtk_adjustment_new (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
  if (*place == adjustment)
    return;
  if (*place != NULL)
    g_signal_handlers_disconnect_by_func (*place, scrolled_cb, self);
  g_object_ref_sink (adjustment);
  g_clear_object (place);
  *place = adjustment;
  g_signal_connect_object (adjustment, "value-changed", G_CALLBACK (scrolled_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
bs_rack_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  BsRackView *self = BS_RACK_VIEW (object);

  switch (id)
    {
    case PROP_HADJUSTMENT:
    case PROP_VADJUSTMENT:
      g_value_set_object (value, self->adjustments[id - PROP_HADJUSTMENT]);
      break;
    case PROP_HSCROLL_POLICY:
    case PROP_VSCROLL_POLICY:
      g_value_set_enum (value, (int)self->policies[id - PROP_HSCROLL_POLICY]);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_rack_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  BsRackView *self = BS_RACK_VIEW (object);

  switch (id)
    {
    case PROP_HADJUSTMENT:
    case PROP_VADJUSTMENT:
      set_adjustment (self, (GtkOrientation)(id - PROP_HADJUSTMENT), g_value_get_object (value));
      break;
    case PROP_HSCROLL_POLICY:
    case PROP_VSCROLL_POLICY:
      self->policies[id - PROP_HSCROLL_POLICY] = (GtkScrollablePolicy)g_value_get_enum (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

/* Tab leaves it from whichever cell, unless whoever hears the keys goes on to the next. */
static gboolean
bs_rack_view_focus (GtkWidget *widget, GtkDirectionType direction)
{
  if (find_focused (BS_RACK_VIEW (widget)) != NULL)
    return FALSE;
  g_signal_emit (widget, signals[ENTERED], 0);
  return find_focused (BS_RACK_VIEW (widget)) != NULL;
}

static void
bs_rack_view_dispose (GObject *object)
{
  BsRackView *self = BS_RACK_VIEW (object);
  GtkWidget *child;

  for (guint i = 0; i < self->lines->len; i++)
    forget_row (get_line (self, i));
  g_array_set_size (self->lines, 0);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->adjustments[0]);
  g_clear_object (&self->adjustments[1]);
  g_clear_object (&self->rows);
  G_OBJECT_CLASS (bs_rack_view_parent_class)->dispose (object);
}

static void
bs_rack_view_finalize (GObject *object)
{
  BsRackView *self = BS_RACK_VIEW (object);

  g_array_unref (self->lines);
  g_free (self->spans);
  G_OBJECT_CLASS (bs_rack_view_parent_class)->finalize (object);
}

static void
bs_rack_view_class_init (BsRackViewClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->get_property = bs_rack_view_get_property;
  object_class->set_property = bs_rack_view_set_property;
  object_class->dispose = bs_rack_view_dispose;
  object_class->finalize = bs_rack_view_finalize;
  widget_class->measure = bs_rack_view_measure;
  widget_class->size_allocate = bs_rack_view_size_allocate;
  widget_class->focus = bs_rack_view_focus;

  g_object_class_override_property (object_class, PROP_HADJUSTMENT, "hadjustment");
  g_object_class_override_property (object_class, PROP_VADJUSTMENT, "vadjustment");
  g_object_class_override_property (object_class, PROP_HSCROLL_POLICY, "hscroll-policy");
  g_object_class_override_property (object_class, PROP_VSCROLL_POLICY, "vscroll-policy");
  signals[ENTERED] = g_signal_new ("entered", BS_TYPE_RACK_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "rackview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GRID);
}

static void
bs_rack_view_init (BsRackView *self)
{
  self->lines = g_array_new (FALSE, FALSE, sizeof (Line));
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  set_adjustment (self, GTK_ORIENTATION_HORIZONTAL, NULL);
  set_adjustment (self, GTK_ORIENTATION_VERTICAL, NULL);
}

static void
append_title (BsRackView *self, const BsRackColumn *column)
{
  GtkWidget *title = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (title), column->is_text ? 0.0f : 1.0f);
  if (column->is_text)
    gtk_widget_add_css_class (title, "text");
  bs_rack_line_append (BS_RACK_LINE (self->head), title);
}

GtkWidget *
bs_rack_view_new (GtkSelectionModel *rows, const BsRackColumn *columns, int n_columns,
                  const BsRackCellKind *kind, gpointer owner)
{
  g_return_val_if_fail (GTK_IS_SELECTION_MODEL (rows), NULL);

  BsRackView *self = g_object_new (BS_TYPE_RACK_VIEW, NULL);
  self->rows = rows;
  self->columns = columns;
  self->n_columns = n_columns;
  self->kind = kind;
  self->owner = owner;
  self->spans = g_new0 (BsRackSpan, (gsize)n_columns);
  self->head = bs_rack_line_new (self->spans, "head");
  for (int column = 0; column < n_columns; column++)
    append_title (self, &columns[column]);
  gtk_widget_set_parent (self->head, GTK_WIDGET (self));
  add_line (self); /* what all are measured by */
  g_signal_connect_object (rows, "items-changed", G_CALLBACK (items_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (rows, "selection-changed", G_CALLBACK (selection_changed_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

void
bs_rack_view_set_title (BsRackView *self, int column, const char *title)
{
  g_return_if_fail (BS_IS_RACK_VIEW (self));

  GtkLabel *label = GTK_LABEL (bs_rack_line_get (BS_RACK_LINE (self->head), column));
  if (g_strcmp0 (gtk_label_get_text (label), title) != 0)
    gtk_label_set_text (label, title);
}

void
bs_rack_view_show_column (BsRackView *self, int column)
{
  g_return_if_fail (BS_IS_RACK_VIEW (self));

  for (guint i = 0; i < self->lines->len; i++)
    if (get_line (self, i)->position != NOWHERE)
      self->kind->show (self->owner, get_cell (get_line (self, i), column));
}

int
bs_rack_view_count_rows (BsRackView *self)
{
  g_return_val_if_fail (BS_IS_RACK_VIEW (self), 1);

  return self->row_height > 0 ? MAX (get_body_height (self) / self->row_height, 1) : 1;
}

BsRackCell *
bs_rack_view_reach (BsRackView *self, guint position, int column)
{
  g_return_val_if_fail (BS_IS_RACK_VIEW (self), NULL);

  if (position >= count_items (self) || column < 0 || column >= self->n_columns
      || self->row_height == 0)
    return NULL;
  const BsRackSpan *span = &self->spans[column];
  double top = (double)position * self->row_height;
  double page = (double)bs_rack_view_count_rows (self) * self->row_height;
  GtkAdjustment *down = self->adjustments[GTK_ORIENTATION_VERTICAL];

  configure_rows (self); /* there may be more of them since they were laid out */
  if (position < get_first (self))
    gtk_adjustment_set_value (down, top);
  else if (top + self->row_height > get_first (self) * self->row_height + page)
    gtk_adjustment_set_value (down, top + self->row_height - page);
  gtk_adjustment_clamp_page (self->adjustments[GTK_ORIENTATION_HORIZONTAL], span->x,
                             span->x + span->width);
  const Line *line = find_line (self, position);
  return line != NULL ? get_cell (line, column) : NULL;
}

void
bs_rack_view_select (BsRackView *self, guint position, gboolean modify, gboolean extend)
{
  g_return_if_fail (BS_IS_RACK_VIEW (self));

  if (extend)
    {
      guint from = MIN (self->anchor, count_items (self) - 1);
      gtk_selection_model_select_range (self->rows, MIN (from, position),
                                        MAX (from, position) - MIN (from, position) + 1, !modify);
      return;
    }
  self->anchor = position;
  if (modify && gtk_selection_model_is_selected (self->rows, position))
    gtk_selection_model_unselect_item (self->rows, position);
  else
    gtk_selection_model_select_item (self->rows, position, !modify);
}
