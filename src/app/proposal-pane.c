/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/proposal-pane.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/form.h"
#include "app/label.h"
#include "app/live-pressure.h"
#include "app/page.h"
#include "app/pins-list.h"
#include "app/proposal-numbers.h"
#include "app/proposal-picture.h"
#include "words/order.h"

struct _BsProposalPane
{
  GtkWidget parent_instance;

  /* owned */
  BsSession *session;
  BsProposal *proposal;
  BsGlueUpCanvas *canvas;
  BsPlan *plan;                /* that the next two belong to */
  const BsOrderResult *result; /* borrowed from the proposal, to tell whether it has another one */
  BsResults *proposed;         /* of the plan in the order found; NULL when there is none */
  BsStudy *pressing;           /* of that plan too, once nothing better is looked for */
  guint rescale;               /* source that is about to follow the canvas */
  /* children */
  GtkWidget *buttons, *status, *progress, *page;
  /* borrowed from the page */
  GtkWidget *found, *picture, *moves, *why, *numbers;
};

G_DEFINE_FINAL_TYPE (BsProposalPane, bs_proposal_pane, GTK_TYPE_WIDGET)

#define WISH(label, hint, member)                                                                  \
  {                                                                                                \
    BS_FIELD_CHOICE, label, hint, G_STRUCT_OFFSET (BsPlan, wishes.member),                         \
        .choices = bs_words_wishes, .choices_context = BS_WORDS_WISH_CONTEXT                       \
  }

static const BsField wishes[] = {
  WISH (N_ ("Looks"), N_ ("A show face without defects and without steps of colour"), looks),
  WISH (N_ ("Easy planing"), N_ ("All run-out one way, no steps to plane down"), easy_planing),
  WISH (N_ ("Stays flat"), N_ ("Heart sides, bows and moisture that keep each other in check"),
        stays_flat),
  { BS_FIELD_SWITCH, N_ ("May take from the rack"),
    N_ ("Laminations of the rack may be proposed in place of those in the slab"),
    G_STRUCT_OFFSET (BsPlan, wishes.uses_rack) },
};

static void
set_text (GtkWidget *label, const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (label)), text) != 0)
    gtk_label_set_text (GTK_LABEL (label), text);
}

/* The plan in the order found, worked out when either is another one. An order that no longer fits
 * stays to be looked at. */
static void
update_proposed (BsProposalPane *self)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  const BsOrderResult *result = bs_proposal_get_result (self->proposal);

  if (result == NULL)
    g_clear_pointer (&self->proposed, bs_results_unref);
  else if (bs_proposal_fits (self->proposal, plan)
           && (plan != self->plan || result != self->result || self->proposed == NULL))
    {
      g_autoptr (BsPlan) applied = bs_proposal_apply (self->proposal, plan);

      g_clear_pointer (&self->proposed, bs_results_unref);
      self->proposed = bs_evaluate (applied);
    }
  self->result = result;
  if (plan == self->plan)
    return;
  g_clear_pointer (&self->plan, bs_plan_unref);
  self->plan = bs_plan_ref (plan);
}

/* In words: how far it is, what it costs, how good it is known to be. */
static char *
describe_result (BsProposalPane *self, const BsOrderResult *result)
{
  gint32 now = bs_session_get_results (self->session)->order.total;
  gint32 found = result->cost.total;
  g_autofree char *present = bs_words_order_points (now);
  g_autofree char *proposed = bs_words_order_points (found);
  g_autofree char *quality = bs_words_order_quality (MIN (now, found), result->bound);
  g_autofree char *text = NULL;

  if (now < result->bound)
    /* Translators: two costs in points: "18.5", "24.3". */
    return g_strdup_printf (_ ("The present order costs %s, which is less than any that keeps the "
                               "pins; the best of those found costs %s."),
                            present, proposed);
  if (found < now)
    /* Translators: two costs in points: "24.3", "43.2". */
    text = g_strdup_printf (_ ("The order found costs %s, the present one %s."), proposed, present);
  else
    /* Translators: a cost in points: "24.3". */
    text = g_strdup_printf (_ ("The present order costs %s; no better one was found."), present);
  return g_strdup_printf ("%s %s", text, quality);
}

static void
show_status (BsProposalPane *self)
{
  const BsOrderResult *result = bs_proposal_get_result (self->proposal);
  g_autofree char *text = NULL;

  if (result == NULL && bs_proposal_is_looking (self->proposal))
    text = g_strdup (_ ("Looking…"));
  else if (result == NULL)
    text
        = g_strdup (_ ("Say what matters and look for an order. Nothing moves before you use it."));
  else if (!bs_proposal_fits (self->proposal, bs_session_get_plan (self->session)))
    text = g_strdup (_ ("This order was found for the plan as it was before. Look for another one, "
                        "or undo what was changed."));
  else
    text = describe_result (self, result);
  set_text (self->status, text);
}

/* Why the selected lamination stands where it is proposed. */
static void
show_why (BsProposalPane *self)
{
  const char *selected = bs_session_get_selected (self->session);
  g_autofree char *text = NULL;
  int place = -1;

  if (self->proposed != NULL && selected != NULL)
    place = bs_plan_find_place (self->proposed->stack->plan, selected);
  if (self->result != NULL && self->result->changes != NULL && place >= 0)
    text = bs_words_order_change (bs_proposal_get_problem (self->proposal), self->result,
                                  (guint)place);
  set_text (self->why, text != NULL ? text : "");
  gtk_widget_set_visible (self->why, text != NULL);
}

static void
show_pressure (BsProposalPane *self)
{
  bs_proposal_numbers_show_pressure (
      BS_PROPOSAL_NUMBERS (self->numbers), bs_live_pressure_get (self->session),
      bs_study_is_current (self->pressing) ? bs_study_get_result (self->pressing) : NULL);
}

static void
changed_cb (BsProposalPane *self)
{
  gboolean is_looking = bs_proposal_is_looking (self->proposal);
  const BsResults *present = bs_session_get_results (self->session);

  update_proposed (self);
  show_status (self);
  show_why (self);
  gtk_widget_set_opacity (self->progress, is_looking ? 1.0 : 0.0); /* nothing jumps */
  bs_study_set_plan (self->pressing,
                     self->proposed != NULL && !is_looking ? self->proposed->stack->plan : NULL);
  gtk_widget_set_visible (self->found, self->proposed != NULL);
  gtk_widget_set_visible (self->numbers, self->proposed != NULL);
  bs_proposal_picture_show (BS_PROPOSAL_PICTURE (self->picture), self->proposed);
  if (self->proposed == NULL)
    return;
  g_autofree char *moves = bs_words_order_moves (present->stack->plan, self->proposed->stack->plan);
  set_text (self->moves, moves);
  bs_proposal_numbers_show (BS_PROPOSAL_NUMBERS (self->numbers), present, self->proposed);
  show_pressure (self);
}

static void
progress_cb (BsProposalPane *self)
{
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress),
                                 bs_proposal_get_progress (self->proposal));
}

static gboolean
rescale_cb (gpointer user_data)
{
  BsProposalPane *self = user_data;

  self->rescale = 0;
  bs_proposal_picture_set_per_mm (BS_PROPOSAL_PICTURE (self->picture),
                                  bs_glue_up_canvas_get_per_mm (self->canvas));
  return G_SOURCE_REMOVE;
}

/* Sizes are being given out just now: the picture asks for another one later. */
static void
rescaled_cb (BsProposalPane *self)
{
  if (self->rescale == 0)
    self->rescale = g_idle_add (rescale_cb, self);
}

static gboolean
bs_proposal_pane_grab_focus (GtkWidget *widget)
{
  return gtk_widget_child_focus (BS_PROPOSAL_PANE (widget)->buttons, GTK_DIR_TAB_FORWARD);
}

static void
bs_proposal_pane_dispose (GObject *object)
{
  BsProposalPane *self = BS_PROPOSAL_PANE (object);
  GtkWidget *child;

  g_clear_handle_id (&self->rescale, g_source_remove);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->proposed, bs_results_unref);
  g_clear_pointer (&self->plan, bs_plan_unref);
  if (self->pressing != NULL)
    bs_study_set_plan (self->pressing, NULL);
  g_clear_object (&self->pressing);
  g_clear_object (&self->canvas);
  g_clear_object (&self->proposal);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_proposal_pane_parent_class)->dispose (object);
}

static void
bs_proposal_pane_class_init (BsProposalPaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_proposal_pane_dispose;
  widget_class->grab_focus = bs_proposal_pane_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "proposal");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
buttons_new (void)
{
  static const char *const names[]
      = { "order.look", "order.stop", "order.use", "order.discard", "order.close" };
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_add_css_class (bar, "commands");
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      GtkWidget *button = bs_actions_button_new (names[i]);

      gtk_widget_set_hexpand (button, i + 1 == G_N_ELEMENTS (names));
      gtk_widget_set_halign (button,
                             i + 1 == G_N_ELEMENTS (names) ? GTK_ALIGN_END : GTK_ALIGN_FILL);
      gtk_box_append (GTK_BOX (bar), button);
    }
  return bar;
}

static void
bs_proposal_pane_init (BsProposalPane *self)
{
  gtk_orientable_set_orientation (
      GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Proposed order"), -1);
  self->buttons = buttons_new ();
  self->status = bs_label_new_wrapped (NULL, NULL);
  self->progress = gtk_progress_bar_new ();
  self->moves = bs_label_new_wrapped (NULL, NULL);
  self->why = bs_label_new_wrapped (NULL, NULL);
  self->page = bs_page_new ();
  gtk_widget_add_css_class (self->status, "status");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How far the search is"), -1);
  gtk_widget_set_vexpand (self->page, TRUE);
  gtk_widget_set_parent (self->buttons, GTK_WIDGET (self));
  gtk_widget_set_parent (self->status, GTK_WIDGET (self));
  gtk_widget_set_parent (self->progress, GTK_WIDGET (self));
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
}

static void
build (BsProposalPane *self)
{
  GtkWidget *key = bs_form_note_new (
      /* Translators: what the signs under a picture mean. */
      _ ("↕ turned over    ↔ turned end for end    □ from the rack or to it"));

  self->picture = bs_proposal_picture_new (self->session);
  self->numbers = bs_proposal_numbers_new ();
  self->found = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_halign (key, GTK_ALIGN_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (key), -1);
  gtk_box_append (GTK_BOX (self->found), self->picture);
  gtk_box_append (GTK_BOX (self->found), key);
  gtk_box_append (GTK_BOX (self->found), self->moves);
  gtk_box_append (GTK_BOX (self->found), self->why);
  bs_page_add_wide (self->page, self->found);
  bs_page_add (self->page, self->numbers);
  bs_page_add (self->page, bs_form_new (self->session, N_ ("What matters"), &bs_record_plan, NULL,
                                        wishes, G_N_ELEMENTS (wishes)));
  bs_page_add (self->page, bs_pins_list_new (self->session));
}

GtkWidget *
bs_proposal_pane_new (BsSession *session, BsProposal *proposal, BsGlueUpCanvas *canvas)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);
  g_return_val_if_fail (BS_IS_PROPOSAL (proposal), NULL);

  BsProposalPane *self = g_object_new (BS_TYPE_PROPOSAL_PANE, NULL);
  self->session = g_object_ref (session);
  self->proposal = g_object_ref (proposal);
  self->canvas = g_object_ref (canvas);
  self->pressing = bs_study_new (&bs_study_pressing);
  build (self);
  bs_live_pressure_connect (session, G_CALLBACK (show_pressure), self);
  g_signal_connect_object (self->pressing, "changed", G_CALLBACK (show_pressure), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (show_why), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (proposal, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (proposal, "notify::progress", G_CALLBACK (progress_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (canvas, "rescaled", G_CALLBACK (rescaled_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  rescale_cb (self);
  return GTK_WIDGET (self);
}

void
bs_proposal_pane_show_problem (BsProposalPane *self, const char *problem)
{
  g_return_if_fail (BS_IS_PROPOSAL_PANE (self));

  if (problem != NULL)
    set_text (self->status, problem);
}
