/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-compare-page.h"

#include <glib/gi18n.h>

#include "app/chart-area.h"
#include "app/drop-down.h"
#include "app/form.h"
#include "app/page.h"
#include "app/wood-columns.h"
#include "app/wood-details.h"
#include "app/wood-item.h"
#include "app/wood-table.h"
#include "core/wood-compare.h"
#include "draw/hardness-chart.h"
#include "words/table-names.h"

#define TABLE_HEIGHT 264

struct _BsWoodComparePage
{
  GtkWidget parent_instance;

  /* owned */
  BsSession *session;
  GListStore *items; /* BsWoodItem */
  GtkFilterListModel *filtered;
  GtkSingleSelection *selection;
  GtkWidget *page; /* child */

  /* borrowed from the page */
  GtkWidget *problem;
  GtkWidget *chart;
  GtkColumnView *table;
  GtkCheckButton *only_fit;
  GtkDropDown *sorting;
  BsWoodDetails *details;

  gboolean is_stale; /* the plan changed while nobody looked */
};

G_DEFINE_FINAL_TYPE (BsWoodComparePage, bs_wood_compare_page, GTK_TYPE_WIDGET)

static const BsPlan *
get_shown_plan (BsWoodComparePage *self)
{
  return bs_session_get_results (self->session)->stack->plan;
}

static BsWoodItem *
get_item (BsWoodComparePage *self, guint i)
{
  g_autoptr (BsWoodItem) item = g_list_model_get_item (G_LIST_MODEL (self->items), i);
  return item; /* the list holds it */
}

static guint
count_items (BsWoodComparePage *self)
{
  return g_list_model_get_n_items (G_LIST_MODEL (self->items));
}

static const char *
get_selected_id (BsWoodComparePage *self)
{
  BsWoodItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? bs_wood_item_get_id (item) : NULL;
}

/* The chart. */

static gboolean
is_used (const BsPlan *plan, const char *wood)
{
  for (guint i = 0; i < plan->laminations->len; i++)
    if (g_strcmp0 (((const BsLamination *)plan->laminations->pdata[i])->wood, wood) == 0)
      return TRUE;
  return FALSE;
}

static int
compare_marks (gconstpointer a, gconstpointer b)
{
  const double first = ((const BsHardnessMark *)a)->hardness_n;
  const double second = ((const BsHardnessMark *)b)->hardness_n;

  return (first > second) - (first < second);
}

static GArray *
list_marks (BsWoodComparePage *self)
{
  const BsPlan *plan = get_shown_plan (self);
  const char *selected = get_selected_id (self);
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (BsHardnessMark));

  for (guint i = 0; i < count_items (self); i++)
    {
      const BsWoodCard *card = bs_wood_item_get_card (get_item (self, i));
      const BsHardnessMark mark = {
        .name = bs_words_wood (card->wood),
        .hardness_n = card->hardness_n,
        .is_estimated = card->is_hardness_estimated,
        .is_fit = card->unfit == 0,
        .is_chosen = g_strcmp0 (card->wood->id, selected) == 0 || is_used (plan, card->wood->id),
      };
      if (card->hardness_n > 0.0) /* not when it is not known */
        g_array_append_val (marks, mark);
    }
  g_array_sort (marks, compare_marks);
  return marks;
}

static void
draw_chart (cairo_t *cr, const BsChart *chart, gpointer user_data)
{
  BsWoodComparePage *self = user_data;
  const BsStack *stack = bs_session_get_results (self->session)->stack;
  const BsWoodWish wish = bs_wood_wish_of (stack);
  g_autoptr (GArray) marks = list_marks (self);
  const BsHardnessScale scale = { .marks = (const BsHardnessMark *)(gpointer)marks->data,
                                  .n = marks->len,
                                  .low_n = wish.hardness_low_n,
                                  .high_n = wish.hardness_high_n,
                                  .is_range_usual = wish.is_hardness_usual,
                                  .units = stack->plan->units };

  bs_draw_hardness_chart (cr, &scale, chart);
}

static double
get_chart_height (const BsChart *chart, gpointer user_data)
{
  return bs_hardness_chart_get_height (chart);
}

/* The rows. */

static gboolean
are_same_woods (BsWoodComparePage *self, const GPtrArray *woods)
{
  if (count_items (self) != woods->len)
    return FALSE;
  for (guint i = 0; i < woods->len; i++)
    if (!g_str_equal (bs_wood_item_get_id (get_item (self, i)),
                      ((const BsWood *)woods->pdata[i])->id))
      return FALSE;
  return TRUE;
}

static void
select_id (BsWoodComparePage *self, const char *id)
{
  GListModel *rows = G_LIST_MODEL (self->selection);

  for (guint i = 0; i < g_list_model_get_n_items (rows); i++)
    {
      g_autoptr (BsWoodItem) item = g_list_model_get_item (rows, i);
      if (g_str_equal (bs_wood_item_get_id (item), id))
        gtk_single_selection_set_selected (self->selection, i);
    }
}

static BsWoodCard
find_card (BsWoodComparePage *self, const BsWood *wood, const BsWoodWish *wish)
{
  return bs_wood_compare (wood, wish, bs_wood_thickest_lumber (get_shown_plan (self), wood->id));
}

/* Woods stay in their rows while their numbers change; only other woods make other rows. */
static void
show_woods (BsWoodComparePage *self)
{
  const BsWoodWish wish = bs_wood_wish_of (bs_session_get_results (self->session)->stack);
  g_autoptr (GPtrArray) woods = bs_wood_table_list (bs_wood_table_get (), get_shown_plan (self));
  g_autofree char *selected = g_strdup (get_selected_id (self));

  if (are_same_woods (self, woods))
    for (guint i = 0; i < woods->len; i++)
      {
        const BsWoodCard card = find_card (self, woods->pdata[i], &wish);
        bs_wood_item_set_card (get_item (self, i), &card);
      }
  else
    {
      g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);
      for (guint i = 0; i < woods->len; i++)
        {
          const BsWoodCard card = find_card (self, woods->pdata[i], &wish);
          g_ptr_array_add (items, bs_wood_item_new (&card));
        }
      g_list_store_splice (self->items, 0, count_items (self), items->pdata, items->len);
    }
  gtk_filter_changed (gtk_filter_list_model_get_filter (self->filtered),
                      GTK_FILTER_CHANGE_DIFFERENT);
  bs_wood_columns_sort_again (self->table);
  if (selected != NULL)
    select_id (self, selected);
}

/* The first wood that the plan uses, when nobody chose one. */
static void
select_used (BsWoodComparePage *self)
{
  const BsPlan *plan = get_shown_plan (self);

  if (plan->laminations->len > 0 && get_selected_id (self) == NULL)
    {
      const BsLamination *first = plan->laminations->pdata[0];
      if (first->wood != NULL)
        select_id (self, first->wood);
    }
}

static void
refresh (BsWoodComparePage *self)
{
  const char *problem = bs_wood_table_get_problem (bs_wood_table_get ());

  self->is_stale = FALSE;
  gtk_label_set_text (GTK_LABEL (self->problem), problem != NULL ? problem : "");
  gtk_widget_set_visible (self->problem, problem != NULL);
  show_woods (self);
  select_used (self);
  bs_wood_details_refresh (self->details);
  gtk_widget_queue_draw (self->chart);
}

static void
changed_cb (BsWoodComparePage *self)
{
  g_assert (BS_IS_WOOD_COMPARE_PAGE (self));

  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh (self);
  else
    self->is_stale = TRUE;
}

static void
bs_wood_compare_page_map (GtkWidget *widget)
{
  BsWoodComparePage *self = BS_WOOD_COMPARE_PAGE (widget);

  if (self->is_stale)
    refresh (self);
  GTK_WIDGET_CLASS (bs_wood_compare_page_parent_class)->map (widget);
}

static void
row_selected_cb (BsWoodComparePage *self)
{
  bs_wood_details_set_id (self->details, get_selected_id (self));
  gtk_widget_queue_draw (self->chart);
}

static void
copied_cb (BsWoodComparePage *self, const char *id)
{
  gtk_check_button_set_active (self->only_fit, FALSE);
  select_id (self, id);
}

/* Around the table. */

static gboolean
is_shown (gpointer item, gpointer user_data)
{
  BsWoodComparePage *self = user_data;

  return !gtk_check_button_get_active (self->only_fit)
         || bs_wood_item_get_card (BS_WOOD_ITEM (item))->unfit == 0;
}

static void
only_fit_cb (BsWoodComparePage *self)
{
  gtk_filter_changed (gtk_filter_list_model_get_filter (self->filtered),
                      GTK_FILTER_CHANGE_DIFFERENT);
}

/* The titles of the columns take only the pointer. */
static void
sorting_cb (BsWoodComparePage *self)
{
  GListModel *columns = gtk_column_view_get_columns (self->table);
  g_autoptr (GtkColumnViewColumn) column
      = g_list_model_get_item (columns, gtk_drop_down_get_selected (self->sorting));

  gtk_column_view_sort_by_column (self->table, NULL, GTK_SORT_ASCENDING);
  gtk_column_view_sort_by_column (self->table, column, GTK_SORT_ASCENDING);
}

static GtkWidget *
new_sorting (BsWoodComparePage *self)
{
  GListModel *columns = gtk_column_view_get_columns (self->table);
  GtkStringList *titles = gtk_string_list_new (NULL);

  for (guint i = 0; i < g_list_model_get_n_items (columns); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i);
      gtk_string_list_append (titles, gtk_column_view_column_get_title (column));
    }
  GtkWidget *sorting = gtk_drop_down_new (G_LIST_MODEL (titles), NULL);
  bs_drop_down_set_name (GTK_DROP_DOWN (sorting), _ ("Sorted by"));
  self->sorting = GTK_DROP_DOWN (sorting);
  g_signal_connect_swapped (sorting, "notify::selected", G_CALLBACK (sorting_cb), self);
  return sorting;
}

/* What stands over the table. */
static GtkWidget *
new_table_bar (BsWoodComparePage *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (_ ("Sorted by"));

  gtk_widget_set_hexpand (GTK_WIDGET (self->only_fit), TRUE);
  gtk_box_append (GTK_BOX (bar), GTK_WIDGET (self->only_fit));
  gtk_box_append (GTK_BOX (bar), label);
  gtk_box_append (GTK_BOX (bar), new_sorting (self));
  return bar;
}

static void
build_table (BsWoodComparePage *self)
{
  GtkFilter *filter = GTK_FILTER (gtk_custom_filter_new (is_shown, self, NULL));

  self->only_fit
      = GTK_CHECK_BUTTON (gtk_check_button_new_with_mnemonic (_ ("Only those that _fit")));
  g_signal_connect_swapped (self->only_fit, "toggled", G_CALLBACK (only_fit_cb), self);
  self->items = g_list_store_new (BS_TYPE_WOOD_ITEM);
  self->filtered = gtk_filter_list_model_new (g_object_ref (G_LIST_MODEL (self->items)), filter);
  self->table = GTK_COLUMN_VIEW (gtk_column_view_new (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->table), "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->table), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Woods side by side"), -1);

  GtkSortListModel *sorted
      = gtk_sort_list_model_new (g_object_ref (G_LIST_MODEL (self->filtered)),
                                 g_object_ref (gtk_column_view_get_sorter (self->table)));
  self->selection = gtk_single_selection_new (G_LIST_MODEL (sorted));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_column_view_set_model (self->table, GTK_SELECTION_MODEL (self->selection));
  bs_wood_columns_append (self->table, self->session);
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (row_selected_cb),
                           self, G_CONNECT_SWAPPED);
}

static GtkWidget *
new_table_block (BsWoodComparePage *self)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (scroller), FALSE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->table));
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), TABLE_HEIGHT);
  gtk_box_append (GTK_BOX (block), new_table_bar (self));
  gtk_box_append (GTK_BOX (block), scroller);
  gtk_box_append (
      GTK_BOX (block),
      bs_form_note_new (_ (
          "Moves: the slab’s width over the year. Weighs: the slab. Sags: the slab in its middle, "
          "lying on its ends, under 1 kN (225 lbf). Costs: its rough lumber. Planing: by hand. "
          "Thickest: among your boards and what your yards offer. ≈ estimated from the density.")));
  gtk_label_set_max_width_chars (GTK_LABEL (gtk_widget_get_last_child (block)), -1);
  return block;
}

static void
build (BsWoodComparePage *self)
{
  self->page = bs_page_new ();
  self->problem = bs_form_note_new (NULL);
  gtk_label_set_max_width_chars (GTK_LABEL (self->problem), -1);
  gtk_widget_remove_css_class (self->problem, "faint");
  self->chart = bs_chart_area_new (get_chart_height, draw_chart, self,
                                   _ ("Woods along the scale of side hardness; the numbers are in "
                                      "the table below"));
  build_table (self);
  self->details = BS_WOOD_DETAILS (bs_wood_details_new (self->session));
  g_signal_connect_object (self->details, "copied", G_CALLBACK (copied_cb), self,
                           G_CONNECT_SWAPPED);

  bs_page_add_wide (self->page, self->problem);
  bs_page_add_wide (self->page, self->chart);
  bs_page_add_wide (self->page, new_table_block (self));
  bs_page_add_wide (self->page, GTK_WIDGET (self->details));
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
}

static void
bs_wood_compare_page_dispose (GObject *object)
{
  BsWoodComparePage *self = BS_WOOD_COMPARE_PAGE (object);

  if (self->selection != NULL) /* the table lets go of it while what it would tell is gone */
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_clear_pointer (&self->page, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->filtered);
  g_clear_object (&self->items);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_wood_compare_page_parent_class)->dispose (object);
}

static void
bs_wood_compare_page_class_init (BsWoodComparePageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_wood_compare_page_dispose;
  widget_class->map = bs_wood_compare_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
bs_wood_compare_page_init (BsWoodComparePage *self)
{
  self->is_stale = TRUE;
}

GtkWidget *
bs_wood_compare_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsWoodComparePage *self = g_object_new (BS_TYPE_WOOD_COMPARE_PAGE, NULL);
  self->session = g_object_ref (session);
  build (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (bs_wood_table_get (), "changed", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
