/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/fold.h"

#include "app/focus-order.h"

/* The column's width; and, folded, the part of the height that the last child gets. */
#define COLUMN_WIDTH 300
#define SECOND_SHARE 0.2
#define HAIRLINE_ALPHA 0.15f

enum
{
  PROP_0,
  PROP_MAIN,
  PROP_FIRST,
  PROP_SECOND,
  N_PROPS
};

#define N_CHILDREN 3

struct _BsFold
{
  GtkWidget parent_instance;

  GtkWidget *children[N_CHILDREN]; /* main, first, second; any may be missing */
  gboolean is_folded;
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (BsFold, bs_fold, GTK_TYPE_WIDGET)

static void
measure_child (GtkWidget *child, GtkOrientation orientation, int for_size, int *minimum,
               int *natural)
{
  *minimum = *natural = 0;
  if (child != NULL && gtk_widget_should_layout (child))
    gtk_widget_measure (child, orientation, for_size, minimum, natural, NULL, NULL);
}

/* By the window and not by the space given, so that all folds of a window agree; and by what the
 * main child needs, since nothing may be cut off. */
static gboolean
must_fold (BsFold *self, int width)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  int window = root != NULL ? gtk_widget_get_width (GTK_WIDGET (root)) : 0;
  int least, natural;

  if (window == 0) /* that has no size yet */
    window = width;
  measure_child (self->children[0], GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural);
  return window < BS_FOLD_WIDTH || width - COLUMN_WIDTH < least;
}

static GtkSizeRequestMode
bs_fold_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* The least is what the folded form needs: a window can always be made narrow. */
static void
measure_width (BsFold *self, int *minimum, int *natural)
{
  int least, unused;

  measure_child (self->children[0], GTK_ORIENTATION_HORIZONTAL, -1, minimum, natural);
  for (int i = 1; i < N_CHILDREN; i++)
    {
      measure_child (self->children[i], GTK_ORIENTATION_HORIZONTAL, -1, &least, &unused);
      *minimum = MAX (*minimum, least);
    }
  *natural = MAX (*minimum, *natural + COLUMN_WIDTH);
}

/* In the form that such a width gives: beside one another, the higher side decides. Where no width
 * is said, the least of all is asked for, which is that of the wide form. */
static void
measure_height (BsFold *self, int width, int *minimum, int *natural)
{
  gboolean is_folded = width >= 0 && must_fold (self, width);
  int column = is_folded ? width : COLUMN_WIDTH;
  int main_width = is_folded || width < 0 ? width : width - COLUMN_WIDTH;
  int least, first, wished, second, unused;

  measure_child (self->children[0], GTK_ORIENTATION_VERTICAL, main_width, &least, natural);
  measure_child (self->children[1], GTK_ORIENTATION_VERTICAL, column, &first, &wished);
  measure_child (self->children[2], GTK_ORIENTATION_VERTICAL, column, &second, &unused);
  *minimum = is_folded ? least + first + second : MAX (least, wished + second);
  *natural = MAX (*minimum, *natural);
}

static void
bs_fold_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                 int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsFold *self = BS_FOLD (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (self, minimum, natural);
  else
    measure_height (self, for_size, minimum, natural);
}

static void
allocate_child (GtkWidget *child, int x, int y, int width, int height)
{
  if (child == NULL || !gtk_widget_should_layout (child))
    return;

  int least_width, least_height, unused;
  measure_child (child, GTK_ORIENTATION_HORIZONTAL, -1, &least_width, &unused);
  width = MAX (width, least_width);
  measure_child (child, GTK_ORIENTATION_VERTICAL, width, &least_height, &unused);
  gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, width, MAX (height, least_height) }, -1);
}

static void
allocate_column (BsFold *self, int width, int height)
{
  int main_width = width - COLUMN_WIDTH;
  int unused, first;

  measure_child (self->children[1], GTK_ORIENTATION_VERTICAL, COLUMN_WIDTH, &unused, &first);
  allocate_child (self->children[0], 0, 0, main_width, height);
  allocate_child (self->children[1], main_width, 0, COLUMN_WIDTH, first);
  allocate_child (self->children[2], main_width, first, COLUMN_WIDTH, height - first);
}

static void
allocate_under (BsFold *self, int width, int height)
{
  int first, second, unused;

  measure_child (self->children[1], GTK_ORIENTATION_VERTICAL, width, &first, &unused);
  measure_child (self->children[2], GTK_ORIENTATION_VERTICAL, width, &second, &unused);
  second = MAX (second, (int)(height * SECOND_SHARE));
  allocate_child (self->children[0], 0, 0, width, height - first - second);
  allocate_child (self->children[1], 0, height - first - second, width, first);
  allocate_child (self->children[2], 0, height - second, width, second);
}

static void
bs_fold_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsFold *self = BS_FOLD (widget);

  self->is_folded = must_fold (self, width);
  if (self->is_folded)
    allocate_under (self, width, height);
  else
    allocate_column (self, width, height);
}

/* A hairline in the text's colour, along the edge where two children meet. */
static void
snapshot_edges (GtkWidget *child, gboolean is_folded, GtkSnapshot *snapshot)
{
  graphene_rect_t bounds;
  GdkRGBA color;

  if (child == NULL || !gtk_widget_compute_bounds (child, gtk_widget_get_parent (child), &bounds))
    return;
  gtk_style_context_get_color (gtk_widget_get_style_context (child), &color);
  color.alpha *= HAIRLINE_ALPHA;
  if (!is_folded)
    gtk_snapshot_append_color (
        snapshot, &color,
        &GRAPHENE_RECT_INIT (bounds.origin.x, bounds.origin.y, 1.0f, bounds.size.height));
  if (is_folded || bounds.origin.y > 0.0f)
    gtk_snapshot_append_color (
        snapshot, &color,
        &GRAPHENE_RECT_INIT (bounds.origin.x, bounds.origin.y, bounds.size.width, 1.0f));
}

static void
bs_fold_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsFold *self = BS_FOLD (widget);

  GTK_WIDGET_CLASS (bs_fold_parent_class)->snapshot (widget, snapshot);
  for (int i = 1; i < N_CHILDREN; i++)
    snapshot_edges (self->children[i], self->is_folded, snapshot);
}

static void
set_child (BsFold *self, int index, GtkWidget *child)
{
  g_clear_pointer (&self->children[index], gtk_widget_unparent);
  if (child == NULL)
    return;
  self->children[index] = child;
  /* the order of the children is the order in which Tab goes */
  GtkWidget *previous = NULL;
  for (int i = 0; i < index; i++)
    if (self->children[i] != NULL)
      previous = self->children[i];
  gtk_widget_insert_after (child, GTK_WIDGET (self), previous);
}

static void
bs_fold_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  g_value_set_object (value, BS_FOLD (object)->children[id - PROP_MAIN]);
}

static void
bs_fold_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  set_child (BS_FOLD (object), (int)id - PROP_MAIN, g_value_get_object (value));
}

static void
bs_fold_dispose (GObject *object)
{
  BsFold *self = BS_FOLD (object);

  for (int i = 0; i < N_CHILDREN; i++)
    g_clear_pointer (&self->children[i], gtk_widget_unparent);
  G_OBJECT_CLASS (bs_fold_parent_class)->dispose (object);
}

static void
bs_fold_class_init (BsFoldClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  const char *const names[] = { "main", "first", "second" };

  object_class->dispose = bs_fold_dispose;
  object_class->get_property = bs_fold_get_property;
  object_class->set_property = bs_fold_set_property;
  widget_class->focus = bs_focus_in_order;
  widget_class->get_request_mode = bs_fold_get_request_mode;
  widget_class->measure = bs_fold_measure;
  widget_class->size_allocate = bs_fold_size_allocate;
  widget_class->snapshot = bs_fold_snapshot;

  for (guint i = 0; i < N_CHILDREN; i++)
    props[PROP_MAIN + i] = g_param_spec_object (names[i], NULL, NULL, GTK_TYPE_WIDGET,
                                                G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_css_name (widget_class, "fold");
}

static void
bs_fold_init (BsFold *self)
{
}
