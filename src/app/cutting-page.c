/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-page.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/cutting-canvas.h"
#include "app/cutting-search.h"
#include "app/cutting-table.h"
#include "app/number-row.h"
#include "core/money.h"
#include "core/sawing-lamination.h"
#include "core/sawing-rack.h"
#include "core/units.h"
#include "plan/edits.h"
#include "words/sawing.h"

struct _BsCuttingPage
{
  GtkWidget parent_instance;

  /* owned */
  BsSession *session;
  BsCuttingSearch *search;
  BsPlan *proven; /* the plan that the search's proof is of, or NULL */
  BsPlan *judged; /* the last plan that was asked about, and whether the proof holds of it */
  gboolean holds;
  /* children, borrowed */
  BsCuttingCanvas *canvas;
  BsCuttingTable *table;
  GtkWidget *plan_button, *stop_button, *progress;
  GtkLabel *message, *sum;
  GtkWidget *price, *bound, *waste, *kerf; /* BsNumberRow */
};

G_DEFINE_FINAL_TYPE (BsCuttingPage, bs_cutting_page, GTK_TYPE_WIDGET)

#define BOARDS_SHARE 0.6 /* of the room, at least */
#define LEAST_CHARS 60   /* of a message: narrower, it would be many lines high */
#define TABLE_USUAL 190

static BsPlan *
get_shown (BsCuttingPage *self)
{
  return bs_session_get_results (self->session)->stack->plan;
}

/* What the search proved, when it holds of a plan; else NULL. A plan never changes, so the answer
 * is kept. */
static const BsSawPlan *
get_proof (BsCuttingPage *self, BsPlan *plan)
{
  const BsSawPlan *found = bs_cutting_search_get_found (self->search, NULL);

  if (found == NULL || self->proven == NULL)
    return NULL;
  if (plan != self->judged)
    {
      bs_plan_ref (plan);
      g_clear_pointer (&self->judged, bs_plan_unref);
      self->judged = plan;
      self->holds = bs_saw_proof_holds (self->proven, plan);
    }
  return self->holds ? found : NULL;
}

static void
set_proven (BsCuttingPage *self, BsPlan *plan)
{
  g_clear_pointer (&self->judged, bs_plan_unref);
  g_clear_pointer (&self->proven, bs_plan_unref);
  self->proven = plan != NULL ? bs_plan_ref (plan) : NULL;
}

/* Numbers. */

static void
show_numbers (BsCuttingPage *self)
{
  BsPlan *plan = get_shown (self);
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  const BsSawPlan *found = get_proof (self, plan);
  g_autofree char *sum = bs_words_saw_sum (rack, plan->units);
  BsWorking why;

  bs_saw_explain_price (rack, plan, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->price), &why, plan->units, NULL);
  bs_saw_explain_bound (found, plan, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->bound), &why, plan->units, NULL);
  bs_saw_explain_waste (rack, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->waste), &why, plan->units, NULL);
  bs_saw_explain_kerf (rack, plan, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->kerf), &why, plan->units, NULL);
  gtk_label_set_text (self->sum, sum);
  gtk_widget_set_visible (GTK_WIDGET (self->sum), rack->n_taken > 0);
}

/* The message: what is being done, or what there is to say about the cuts. */

static char *
tell_search (BsCuttingPage *self)
{
  const BsPlan *plan = bs_cutting_search_get_plan (self->search);
  BsCuttingProgress so_far = bs_cutting_search_get_progress (self->search);

  if (!so_far.has_best)
    return g_strdup (_ ("Planning the cuts…"));
  if (!so_far.is_bound) /* then nothing is proven either */
    return g_strdup (
        _ ("Planning the cuts: not everything has found a place so far. Stop takes what "
           "was found."));
  if (so_far.price_minor <= so_far.bound_minor)
    return g_strdup (_ ("Planning the cuts: everything has a place and nothing costs less; looking "
                        "for less waste. Stop takes what was found."));
  g_autofree char *price = bs_money_format ((double)so_far.price_minor, plan->currency);
  if (so_far.bound_minor <= 0)
    /* Translators: a price. */
    return g_strdup_printf (
        _ ("Planning the cuts: found so far, %s; what it costs at least is being "
           "worked out. Stop takes what was found."),
        price);
  double saved = 1.0 - (double)so_far.bound_minor / (double)so_far.price_minor;
  g_autofree char *bound = bs_money_format ((double)so_far.bound_minor, plan->currency);
  g_autofree char *gap = bs_units_format (100.0 * saved, BS_QUANTITY_PERCENT, plan->units);
  /* Translators: two prices, and a difference in per cent. */
  return g_strdup_printf (_ ("Planning the cuts: found so far, %s; it cannot be done for less than "
                             "%s, so at most %s could be saved. Stop takes what was found."),
                          price, bound, gap);
}

/* The bar stands for the tries to do better, of which it is known how many there are; before them
 * there is nothing that it could be a share of. */
static void
show_progress (BsCuttingPage *self)
{
  double done = bs_cutting_search_is_running (self->search)
                    ? bs_cutting_search_get_progress (self->search).done
                    : 0.0;
  /* Translators: %.0f is a share in per cent. */
  g_autofree char *text = g_strdup_printf (_ ("%.0f %% of its tries to do better"), 100.0 * done);

  gtk_widget_set_visible (self->progress, done > 0.0);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), done);
  gtk_progress_bar_set_text (GTK_PROGRESS_BAR (self->progress), text);
}

static char *
tell_proof (const BsSawPlan *found)
{
  if (!found->is_bound)
    return g_strdup (_ ("Not everything finds a place: the table says why."));
  if (found->is_price_least && found->is_waste_least)
    return g_strdup (_ ("Everything has a place. Proven: nothing costs less, and at this price "
                        "nothing wastes less."));
  if (found->is_price_least)
    return g_strdup (
        _ ("Everything has a place. Proven: nothing costs less; it may waste more than "
           "it has to."));
  return g_strdup (_ ("Everything has a place. It may cost more than it has to: the least possible "
                      "price is told below."));
}

static char *
tell_plan (const BsPlan *plan)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);

  if (plan->boards->len == 0)
    return g_strdup (_ ("There are no boards in the rack yet."));
  if (plan->laminations->len + plan->parts->len == 0)
    return g_strdup (_ ("There is nothing to cut yet: no laminations and no parts."));
  if (rack->n_pieces == 0 && rack->n_missing == 0)
    return g_strdup (_ ("Nothing is left to cut: every lamination has its board."));
  if (rack->n_pieces == 0)
    return g_strdup (_ ("Nothing is cut yet. Plan the cuts gives every lamination and part a place "
                        "on a board."));
  if (rack->n_faults > 0)
    return g_strdup_printf (ngettext ("%u board cannot be sawn like this.",
                                      "%u boards cannot be sawn like this.", rack->n_faults),
                            rack->n_faults);
  if (rack->n_missing > 0)
    return g_strdup_printf (ngettext ("%u piece has no place: the table says why.",
                                      "%u pieces have no place: the table says why.",
                                      rack->n_missing),
                            rack->n_missing);
  return g_strdup (_ ("Everything has a place."));
}

static void
show_message (BsCuttingPage *self)
{
  const char *of_canvas = bs_cutting_canvas_get_message (self->canvas);
  BsPlan *plan = bs_session_get_plan (self->session);
  const BsSawPlan *found = get_proof (self, plan);
  g_autofree char *text = NULL;

  if (bs_cutting_search_is_running (self->search))
    text = tell_search (self);
  else if (of_canvas != NULL)
    text = g_strdup (of_canvas);
  else if (found != NULL)
    text = tell_proof (found);
  else
    text = tell_plan (plan);
  gtk_label_set_text (self->message, text);
  show_progress (self);
}

/* Actions. */

static const BsCut *
get_selected (BsCuttingPage *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  int cut = bs_cutting_canvas_get_selected (self->canvas);

  return cut >= 0 && cut < (int)plan->cuts->len ? &g_array_index (plan->cuts, BsCut, cut) : NULL;
}

static gboolean
has_kept (const BsPlan *plan)
{
  for (guint i = 0; i < plan->cuts->len; i++)
    if (g_array_index (plan->cuts, BsCut, i).is_pinned
        || g_array_index (plan->cuts, BsCut, i).is_cut)
      return TRUE;
  return FALSE;
}

static gboolean
has_laminations_to_lay_out (const BsPlan *plan)
{
  for (guint i = 0; i < plan->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, i);
      if (!cut->is_cut && bs_plan_find_lamination (plan, cut->piece) != NULL)
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_pieces_to_plan (const BsPlan *plan)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);

  return plan->boards->len > 0 && rack->n_pieces + rack->n_missing > 0;
}

static void
update_actions (BsCuttingPage *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  const BsPlan *plan = bs_session_get_plan (self->session);
  gboolean is_running = bs_cutting_search_is_running (self->search);
  gboolean is_free = !is_running && !bs_session_has_preview (self->session);
  gboolean is_selected = is_free && get_selected (self) != NULL;

  gtk_widget_action_set_enabled (widget, "cuts.plan", is_free && has_pieces_to_plan (plan));
  gtk_widget_action_set_enabled (widget, "cuts.stop", is_running);
  gtk_widget_action_set_enabled (widget, "cuts.lay-out",
                                 is_free && has_laminations_to_lay_out (plan));
  gtk_widget_action_set_enabled (widget, "piece.pin", is_selected);
  gtk_widget_action_set_enabled (widget, "piece.cut", is_selected);
  gtk_widget_action_set_enabled (widget, "piece.along", is_selected);
  gtk_widget_action_set_enabled (widget, "piece.across", is_selected);
  gtk_widget_action_set_enabled (widget, "piece.board", is_selected);
  gtk_widget_set_visible (self->stop_button, is_running);
  gtk_widget_set_visible (self->plan_button, !is_running);
  gtk_button_set_label (GTK_BUTTON (self->plan_button),
                        has_kept (plan) ? _ ("Plan the rest") : _ ("Plan the cuts"));
}

static void
show_selected (BsCuttingPage *self)
{
  if (!bs_cutting_canvas_is_holding (self->canvas))
    bs_cutting_table_select (self->table, bs_cutting_canvas_get_selected (self->canvas));
  update_actions (self);
}

static void
update (BsCuttingPage *self)
{
  show_numbers (self);
  show_message (self);
  show_selected (self);
}

static void
plan_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsCuttingPage *self = BS_CUTTING_PAGE (widget);

  /* With the keyboard Stop comes to hand where the button was that began it. */
  gboolean has_focus = gtk_widget_has_focus (self->plan_button);

  if (bs_cutting_search_is_running (self->search))
    return;
  set_proven (self, NULL);
  bs_cutting_search_start (self->search, bs_session_get_plan (self->session));
  update (self);
  if (has_focus)
    gtk_widget_grab_focus (self->stop_button);
}

static void
stop_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  bs_cutting_search_stop (BS_CUTTING_PAGE (widget)->search);
}

static void
lay_out_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsCuttingPage *self = BS_CUTTING_PAGE (widget);
  guint n;
  g_autoptr (BsPlan) plan = bs_saw_lay_out (bs_session_get_plan (self->session), &n);
  g_autofree char *label
      = g_strdup_printf (ngettext ("Lay out %u lamination", "Lay out %u laminations", n), n);
  /* Translators: what was done. */
  g_autofree char *text = g_strdup_printf (
      ngettext ("%u lamination now has its board, size, rings, run-out and defects, as the Glue-up "
                "shows; it counts as milled straight and flat.",
                "%u laminations now have their boards, sizes, rings, run-out and defects, as the "
                "Glue-up shows; they count as milled straight and flat.",
                n),
      n);

  bs_session_push (self->session, plan, label, NULL);
  gtk_label_set_text (self->message, text);
}

/* The plan with a flag of the selected piece turned round. */
static BsPlan *
toggle (BsCuttingPage *self, gsize flag)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  int cut = bs_cutting_canvas_get_selected (self->canvas);
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);
  gboolean *value = &G_STRUCT_MEMBER (gboolean, &g_array_index (copy->cuts, BsCut, cut), flag);

  *value = !*value;
  return bs_edit_set_cuts (plan, (const BsCut *)copy->cuts->data, copy->cuts->len);
}

static void
pin_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsCuttingPage *self = BS_CUTTING_PAGE (widget);
  const BsCut *cut = get_selected (self);

  if (cut == NULL)
    return;
  g_autoptr (BsPlan) plan = toggle (self, G_STRUCT_OFFSET (BsCut, is_pinned));
  /* Translators: %s is a piece. Pinned, it stays where it is when the rest is planned anew. */
  g_autofree char *label = g_strdup_printf (cut->is_pinned ? _ ("Release %s") : _ ("Pin %s"),
                                            bs_saw_piece_label (plan, cut->piece));
  bs_session_push (self->session, plan, label, NULL);
}

static void
cut_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsCuttingPage *self = BS_CUTTING_PAGE (widget);
  const BsCut *cut = get_selected (self);

  if (cut == NULL)
    return;
  g_autoptr (BsPlan) plan = toggle (self, G_STRUCT_OFFSET (BsCut, is_cut));
  /* Translators: %s is a piece. */
  g_autofree char *label
      = g_strdup_printf (cut->is_cut ? _ ("Mark %s as not cut") : _ ("Mark %s as cut"),
                         bs_saw_piece_label (plan, cut->piece));
  bs_session_push (self->session, plan, label, NULL);
}

static void
along_action (GtkWidget *widget, const char *name, GVariant *by)
{
  bs_cutting_canvas_move_along (BS_CUTTING_PAGE (widget)->canvas, g_variant_get_int32 (by));
}

static void
across_action (GtkWidget *widget, const char *name, GVariant *by)
{
  bs_cutting_canvas_move_across (BS_CUTTING_PAGE (widget)->canvas, g_variant_get_int32 (by));
}

static void
board_action (GtkWidget *widget, const char *name, GVariant *by)
{
  bs_cutting_canvas_move_to_board (BS_CUTTING_PAGE (widget)->canvas, g_variant_get_int32 (by));
}

/* Follows the others. */

static void
take_found (BsCuttingPage *self, const BsSawPlan *found)
{
  BsPlan *plan = bs_cutting_search_get_plan (self->search);
  g_autoptr (BsPlan) edited
      = bs_edit_set_cuts (plan, (const BsCut *)found->cuts->data, found->cuts->len);

  set_proven (self, edited);
  if (edited != plan)
    bs_session_push (self->session, edited, _ ("Plan the cuts"), NULL);
}

static void
search_ended_cb (BsCuttingPage *self, BsCuttingSearch *search)
{
  g_assert (BS_IS_CUTTING_PAGE (self));

  const GError *error = NULL;
  const BsSawPlan *found = bs_cutting_search_get_found (search, &error);
  gboolean has_focus = gtk_widget_has_focus (self->stop_button);
  gboolean is_same = bs_cutting_search_get_plan (search) == bs_session_get_plan (self->session);

  if (found != NULL && is_same && !bs_session_has_preview (self->session))
    take_found (self, found);
  update (self);
  if (has_focus)
    gtk_widget_grab_focus (self->plan_button);
  if (error != NULL)
    gtk_label_set_text (self->message, error->message);
  else if (!is_same && self->proven != bs_session_get_plan (self->session))
    gtk_label_set_text (self->message,
                        _ ("The plan was changed meanwhile. Plan the cuts once more."));
}

static void
table_selected_cb (BsCuttingPage *self)
{
  int cut = bs_cutting_table_get_selected (self->table);

  if (cut >= 0 && !bs_cutting_canvas_is_holding (self->canvas))
    bs_cutting_canvas_select (self->canvas, cut);
}

static gboolean
bs_cutting_page_grab_focus (GtkWidget *widget)
{
  BsCuttingPage *self = BS_CUTTING_PAGE (widget);

  return gtk_widget_grab_focus (GTK_WIDGET (self->canvas))
         || gtk_widget_grab_focus (self->plan_button);
}

static void
bs_cutting_page_dispose (GObject *object)
{
  BsCuttingPage *self = BS_CUTTING_PAGE (object);

  bs_cutting_search_stop (self->search);
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL;)
    gtk_widget_unparent (child);
  set_proven (self, NULL);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_cutting_page_parent_class)->dispose (object);
}

static void
bs_cutting_page_finalize (GObject *object)
{
  g_object_unref (BS_CUTTING_PAGE (object)->search);
  G_OBJECT_CLASS (bs_cutting_page_parent_class)->finalize (object);
}

static void
bs_cutting_page_class_init (BsCuttingPageClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_cutting_page_dispose;
  object_class->finalize = bs_cutting_page_finalize;
  widget_class->grab_focus = bs_cutting_page_grab_focus;

  gtk_widget_class_install_action (widget_class, "cuts.plan", NULL, plan_action);
  gtk_widget_class_install_action (widget_class, "cuts.stop", NULL, stop_action);
  gtk_widget_class_install_action (widget_class, "cuts.lay-out", NULL, lay_out_action);
  gtk_widget_class_install_action (widget_class, "piece.pin", NULL, pin_action);
  gtk_widget_class_install_action (widget_class, "piece.cut", NULL, cut_action);
  gtk_widget_class_install_action (widget_class, "piece.along", "i", along_action);
  gtk_widget_class_install_action (widget_class, "piece.across", "i", across_action);
  gtk_widget_class_install_action (widget_class, "piece.board", "i", board_action);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

/* Building. */

static GtkWidget *
commands_new (BsCuttingPage *self)
{
  static const char *const of_piece[] = { "piece.pin", "piece.cut" };
  GtkWidget *commands = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *of_cuts = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *of_pieces = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->plan_button = bs_actions_button_new ("cuts.plan");
  self->stop_button = bs_actions_button_new ("cuts.stop");
  gtk_widget_set_tooltip_text (self->plan_button,
                               _ ("Pinned pieces and those already cut stay where they are"));
  gtk_box_append (GTK_BOX (of_cuts), self->plan_button);
  gtk_box_append (GTK_BOX (of_cuts), self->stop_button);
  gtk_box_append (GTK_BOX (of_cuts), bs_actions_button_new ("cuts.lay-out"));
  gtk_widget_set_hexpand (of_cuts, TRUE);
  for (gsize i = 0; i < G_N_ELEMENTS (of_piece); i++)
    gtk_box_append (GTK_BOX (of_pieces), bs_actions_button_new (of_piece[i]));
  gtk_box_append (GTK_BOX (commands), of_cuts);
  gtk_box_append (GTK_BOX (commands), of_pieces);
  gtk_widget_add_css_class (commands, "commands");
  return commands;
}

static GtkLabel *
label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), LEAST_CHARS);
  gtk_widget_add_css_class (label, css_class);
  return GTK_LABEL (label);
}

static GtkWidget *
progress_new (void)
{
  GtkWidget *progress = gtk_progress_bar_new ();

  gtk_progress_bar_set_show_text (GTK_PROGRESS_BAR (progress), TRUE);
  gtk_widget_add_css_class (progress, "cutting-progress");
  gtk_accessible_update_property (GTK_ACCESSIBLE (progress), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How far the search is"), -1);
  return progress;
}

static GtkWidget *
numbers_new (BsCuttingPage *self)
{
  GtkWidget *numbers = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  GtkWidget **rows[] = { &self->price, &self->bound, &self->waste, &self->kerf };

  gtk_box_set_homogeneous (GTK_BOX (numbers), TRUE);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      *rows[i] = bs_number_row_new ();
      gtk_box_append (GTK_BOX (numbers), *rows[i]);
    }
  return numbers;
}

/* The numbers scroll with the boards, so that a low window has room for both. */
static GtkWidget *
boards_new (BsCuttingPage *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->sum = label_new ("faint");
  self->canvas = BS_CUTTING_CANVAS (bs_cutting_canvas_new (self->session));
  gtk_box_append (GTK_BOX (box), numbers_new (self));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->sum));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->canvas));
  gtk_widget_add_css_class (box, "cutting-boards");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  bs_cutting_canvas_set_adjustment (
      self->canvas, gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller)));
  return scroller;
}

/* The first time that the room is known: the boards get most of it. */
static void
panes_sized_cb (GtkPaned *panes, GParamSpec *pspec, gpointer unused)
{
  int room = 0;

  g_object_get (panes, "max-position", &room, NULL);
  if (gtk_widget_get_height (GTK_WIDGET (panes)) == 0 || room <= 0)
    return;
  gtk_paned_set_position (panes, MAX (room - TABLE_USUAL, (int)(BOARDS_SHARE * room)));
  g_signal_handlers_disconnect_by_func (panes, panes_sized_cb, unused);
}

static GtkWidget *
panes_new (BsCuttingPage *self)
{
  GtkWidget *panes = gtk_paned_new (GTK_ORIENTATION_VERTICAL);

  gtk_paned_set_start_child (GTK_PANED (panes), boards_new (self));
  self->table = BS_CUTTING_TABLE (bs_cutting_table_new (self->session));
  gtk_paned_set_end_child (GTK_PANED (panes), GTK_WIDGET (self->table));
  gtk_widget_set_vexpand (panes, TRUE);
  g_signal_connect (panes, "notify::max-position", G_CALLBACK (panes_sized_cb), NULL);
  return panes;
}

static void
bs_cutting_page_init (BsCuttingPage *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->search = bs_cutting_search_new ();
  bs_actions_add_shortcuts (GTK_WIDGET (self), "cuts.");
  bs_actions_add_shortcuts (GTK_WIDGET (self), "piece.");
}

GtkWidget *
bs_cutting_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsCuttingPage *self = g_object_new (BS_TYPE_CUTTING_PAGE, NULL);
  self->session = g_object_ref (session);
  gtk_widget_set_parent (commands_new (self), GTK_WIDGET (self));
  self->message = label_new ("strong");
  gtk_widget_add_css_class (GTK_WIDGET (self->message), "cutting-message");
  gtk_widget_set_parent (GTK_WIDGET (self->message), GTK_WIDGET (self));
  gtk_widget_set_parent (self->progress = progress_new (), GTK_WIDGET (self));
  gtk_widget_set_parent (panes_new (self), GTK_WIDGET (self));
  g_signal_connect_object (session, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->canvas, "notify::message", G_CALLBACK (show_message), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->canvas, "notify::selected", G_CALLBACK (show_selected), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->table, "notify::selected", G_CALLBACK (table_selected_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->search, "progressed", G_CALLBACK (show_message), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->search, "ended", G_CALLBACK (search_ended_cb), self,
                           G_CONNECT_SWAPPED);
  update (self);
  return GTK_WIDGET (self);
}
