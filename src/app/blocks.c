/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/blocks.h"

#include "app/focus-order.h"

#define MOST 4

struct _BsBlocks
{
  GtkWidget parent_instance;

  guint most;
  int column_gap, row_gap;
};

/* How many columns there are, and how wide each is. */
typedef struct
{
  guint n;
  int widths[MOST];
} Columns;

G_DEFINE_FINAL_TYPE (BsBlocks, bs_blocks, GTK_TYPE_WIDGET)

static GtkWidget *
skip_hidden (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

static GtkWidget *
get_first (BsBlocks *self)
{
  return skip_hidden (gtk_widget_get_first_child (GTK_WIDGET (self)));
}

static GtkWidget *
get_next (GtkWidget *child)
{
  return skip_hidden (gtk_widget_get_next_sibling (child));
}

static guint
count (BsBlocks *self)
{
  guint n = 0;

  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child))
    n++;
  return n;
}

/* Each column as wide as the widest in it wants to be; returns the width of all. */
static int
measure_columns (BsBlocks *self, guint n, Columns *columns)
{
  g_assert (n > 0);

  int total = (int)(n - 1) * self->column_gap;
  guint i = 0;

  *columns = (Columns){ .n = n };
  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child), i++)
    {
      int *width = &columns->widths[i % n], natural;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
      *width = MAX (*width, natural);
    }
  for (guint k = 0; k < n; k++)
    total += columns->widths[k];
  return total;
}

/* As many as have room, which share the rest; one always has. Where there are fewer children than
 * would have room beside one another, the others' room stays empty. */
static void
find_columns (BsBlocks *self, int width, Columns *columns)
{
  guint n = CLAMP (count (self), 1, self->most);
  int rest = width - measure_columns (self, n, columns);

  while (n > 1 && rest < 0)
    rest = width - measure_columns (self, --n, columns);

  int widest = 0, parts = (int)n;
  for (guint k = 0; k < n; k++)
    widest = MAX (widest, columns->widths[k]);
  if (n == count (self))
    for (; parts < (int)self->most && rest >= widest + self->column_gap; parts++)
      rest -= widest + self->column_gap;
  for (guint k = 0; k < n; k++)
    columns->widths[k] += rest / parts;
}

static int
find_row_height (GtkWidget *child, const Columns *columns)
{
  int height = 0;

  for (guint k = 0; k < columns->n && child != NULL; k++, child = get_next (child))
    {
      int natural;
      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, columns->widths[k], NULL, &natural, NULL,
                          NULL);
      height = MAX (height, natural);
    }
  return height;
}

static GtkWidget *
get_next_row (GtkWidget *child, const Columns *columns)
{
  for (guint k = 0; k < columns->n && child != NULL; k++)
    child = get_next (child);
  return child;
}

static GtkSizeRequestMode
bs_blocks_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
measure_width (BsBlocks *self, int *minimum, int *natural)
{
  Columns columns;

  *minimum = 0;
  *natural = measure_columns (self, CLAMP (count (self), 1, self->most), &columns);
  for (GtkWidget *child = get_first (self); child != NULL; child = get_next (child))
    {
      int least;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      *minimum = MAX (*minimum, least);
    }
  *natural = MAX (*minimum, *natural);
}

static void
bs_blocks_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                   int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsBlocks *self = BS_BLOCKS (widget);
  int least, width, height = 0;
  Columns columns;

  measure_width (self, &least, &width);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = least;
      *natural = width;
      return;
    }
  find_columns (self, for_size < 0 ? width : MAX (for_size, least), &columns);
  for (GtkWidget *row = get_first (self); row != NULL; row = get_next_row (row, &columns))
    height += (height > 0 ? self->row_gap : 0) + find_row_height (row, &columns);
  *minimum = *natural = height;
}

static void
allocate_row (BsBlocks *self, GtkWidget *child, const Columns *columns, int full_width, int y,
              int height)
{
  const gboolean is_mirrored = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  int x = 0;

  for (guint k = 0; k < columns->n && child != NULL; k++, child = get_next (child))
    {
      const int width = columns->widths[k], left = is_mirrored ? full_width - x - width : x;
      gtk_widget_size_allocate (child, &(GtkAllocation){ left, y, width, height }, -1);
      x += width + self->column_gap;
    }
}

static void
bs_blocks_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsBlocks *self = BS_BLOCKS (widget);
  Columns columns;
  int y = 0;

  find_columns (self, width, &columns);
  for (GtkWidget *row = get_first (self); row != NULL; row = get_next_row (row, &columns))
    {
      const int row_height = find_row_height (row, &columns);
      allocate_row (self, row, &columns, width, y, row_height);
      y += row_height + self->row_gap;
    }
}

static void
bs_blocks_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_blocks_parent_class)->dispose (object);
}

static void
bs_blocks_class_init (BsBlocksClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_blocks_dispose;
  widget_class->focus = bs_focus_in_order;
  widget_class->get_request_mode = bs_blocks_get_request_mode;
  widget_class->measure = bs_blocks_measure;
  widget_class->size_allocate = bs_blocks_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "blocks");
}

static void
bs_blocks_init (BsBlocks *self)
{
}

GtkWidget *
bs_blocks_new (guint most, int column_gap, int row_gap)
{
  g_return_val_if_fail (most >= 1 && most <= MOST, NULL);

  BsBlocks *self = g_object_new (BS_TYPE_BLOCKS, NULL);
  self->most = most;
  self->column_gap = column_gap;
  self->row_gap = row_gap;
  return GTK_WIDGET (self);
}

void
bs_blocks_append (BsBlocks *self, GtkWidget *child)
{
  g_return_if_fail (BS_IS_BLOCKS (self));
  g_return_if_fail (GTK_IS_WIDGET (child));

  gtk_widget_set_parent (child, GTK_WIDGET (self));
}
