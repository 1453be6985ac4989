/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/schedule-choices.h"

#include <glib/gi18n.h>

#include "core/packs.h"
#include "plan/edits.h"
#include "words/schedule.h"

typedef enum
{
  WAY_OWN,
  WAY_SHORTEST,
  WAY_BALANCED,
  N_WAYS
} Way;

static const char *const titles[] = {
  [WAY_OWN] = N_ ("Your packs"),
  [WAY_SHORTEST] = N_ ("Fewest rounds, then least time"),
  [WAY_BALANCED] = N_ ("Most even packs in nearly the same time"),
};

/* One way: what it is called, what it takes, and what is different with it. */
typedef struct
{
  GtkWidget *box;
  GtkCheckButton *button;
  GtkLabel *text;
} Row;

struct _BsScheduleChoices
{
  GtkWidget parent_instance;

  BsSession *session;
  GArray *packs; /* BsPack of the way looked at; NULL: there is none */
  GArray *own;   /* BsPack of the plan shown last; NULL: none was */
  GtkWidget *column;
  /* borrowed from the column */
  Row rows[N_WAYS];
  GtkWidget *use;
  /* flags */
  gboolean is_showing;
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsScheduleChoices, bs_schedule_choices, GTK_TYPE_WIDGET)

static gboolean
has_packs (const BsPlan *plan, const GArray *packs)
{
  return bs_packs_are (plan, (const BsPack *)(const void *)packs->data, packs->len);
}

/* NULL: there is no such way, or it is the person's own. */
static const BsStagesPlan *
get_way (const BsSchedule *schedule, Way way)
{
  const BsStagesPlan *presses;

  if (schedule == NULL || schedule->stages == NULL)
    return NULL;
  if (way == WAY_OWN)
    return schedule->own;
  presses = way == WAY_SHORTEST ? schedule->stages->shortest : schedule->stages->balanced;
  if (presses == NULL || schedule->own == NULL)
    return presses;

  g_autoptr (GArray) packs = bs_stages_plan_list_packs (presses);
  return has_packs (schedule->stack->plan, packs) ? NULL : presses;
}

static Way
find_looked_at (BsScheduleChoices *self)
{
  for (Way way = 0; way < N_WAYS; way++)
    if (gtk_check_button_get_active (self->rows[way].button))
      return way;
  return WAY_OWN;
}

/* The one that was looked at last, else the first there is. */
static Way
choose (BsScheduleChoices *self, const BsSchedule *schedule)
{
  Way way = find_looked_at (self);

  for (Way i = 0; i < N_WAYS && get_way (schedule, way) == NULL; i++)
    way = i;
  return way;
}

const BsStagesPlan *
bs_schedule_choices_find (BsScheduleChoices *self, const BsSchedule *schedule)
{
  return get_way (schedule, choose (self, schedule));
}

/* What it takes; what is different from what is worked by; and of a proposal beside the person's
 * own packs, how good it is known to be. */
static char *
describe_way (const BsSchedule *schedule, Way way)
{
  const BsStagesPlan *presses = get_way (schedule, way), *own = bs_schedule_get_presses (schedule);
  BsUnitSystem units = schedule->stack->plan->units;
  g_autofree char *text = bs_words_presses (presses, units);
  g_autofree char *difference
      = presses != own ? bs_words_presses_difference (presses, own, units) : NULL;
  g_autofree char *proof = way == WAY_SHORTEST && presses != own ? bs_words_proof (schedule) : NULL;

  return g_strjoin ("\n", text, difference, proof, NULL);
}

static void
show_row (BsScheduleChoices *self, const BsSchedule *schedule, Way way)
{
  Row *row = &self->rows[way];
  gboolean is_there = get_way (schedule, way) != NULL;

  gtk_widget_set_visible (row->box, is_there);
  if (is_there)
    {
      g_autofree char *text = describe_way (schedule, way);
      gtk_label_set_text (row->text, text);
    }
}

static void
show_use (BsScheduleChoices *self, const BsSchedule *schedule)
{
  const BsStagesPlan *presses = bs_schedule_choices_find (self, schedule);
  const BsPlan *plan = schedule->stack->plan;

  g_clear_pointer (&self->packs, g_array_unref);
  if (presses != NULL)
    self->packs = bs_stages_plan_list_packs (presses);
  gtk_widget_set_visible (self->use, self->packs != NULL && !has_packs (plan, self->packs));
}

/* Packs that the person has just chosen are what is wanted to be seen. */
static void
look_at_new_packs (BsScheduleChoices *self, const BsSchedule *schedule)
{
  const BsPlan *plan = schedule->stack->plan;

  if (self->own != NULL && has_packs (plan, self->own))
    return;
  g_clear_pointer (&self->own, g_array_unref);
  self->own = g_array_new (FALSE, FALSE, sizeof (BsPack));
  for (guint i = 0; i < plan->packs->len; i++)
    {
      const BsPack *from = &g_array_index (plan->packs, BsPack, i);
      BsPack pack = { .first = from->first, .count = from->count };

      g_array_append_val (self->own, pack);
    }
  gtk_check_button_set_active (self->rows[WAY_OWN].button, TRUE);
}

void
bs_schedule_choices_show (BsScheduleChoices *self, const BsSchedule *schedule)
{
  g_return_if_fail (BS_IS_SCHEDULE_CHOICES (self));

  gtk_widget_set_visible (GTK_WIDGET (self), bs_schedule_choices_find (self, schedule) != NULL);
  if (schedule == NULL)
    return;
  self->is_showing = TRUE;
  look_at_new_packs (self, schedule);
  gtk_check_button_set_active (self->rows[choose (self, schedule)].button, TRUE);
  self->is_showing = FALSE;
  for (Way way = 0; way < N_WAYS; way++)
    show_row (self, schedule, way);
  show_use (self, schedule);
}

static void
toggled_cb (BsScheduleChoices *self, GtkCheckButton *button)
{
  if (!self->is_showing && gtk_check_button_get_active (button))
    g_signal_emit (self, signals[CHANGED], 0);
}

static void
use_cb (BsScheduleChoices *self)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  const BsPack *packs = (const BsPack *)(const void *)self->packs->data;
  guint n = self->packs->len;

  for (guint i = 0; i < n; i++)
    if (packs[i].first + packs[i].count > (int)plan->order->len)
      return; /* of an older plan */
  g_autoptr (BsPlan) edited = bs_edit_set_packs (plan, packs, n);
  bs_session_push (self->session, edited, n > 0 ? _ ("Use these packs") : _ ("Glue in one press"),
                   NULL);
}

static void
bs_schedule_choices_dispose (GObject *object)
{
  BsScheduleChoices *self = BS_SCHEDULE_CHOICES (object);

  g_clear_pointer (&self->column, gtk_widget_unparent);
  g_clear_object (&self->session);
  g_clear_pointer (&self->packs, g_array_unref);
  g_clear_pointer (&self->own, g_array_unref);
  G_OBJECT_CLASS (bs_schedule_choices_parent_class)->dispose (object);
}

static void
bs_schedule_choices_class_init (BsScheduleChoicesClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_schedule_choices_dispose;
  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_SCHEDULE_CHOICES, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "choices");
}

static void
add_row (BsScheduleChoices *self, Way way)
{
  Row *row = &self->rows[way];

  row->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  row->button = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_ (titles[way])));
  row->text = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (row->text, 0.0f);
  gtk_label_set_wrap (row->text, TRUE);
  gtk_widget_set_margin_start (GTK_WIDGET (row->text), 24);
  if (way > 0)
    gtk_check_button_set_group (row->button, self->rows[0].button);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (row->button),
                                  GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, row->text, NULL, -1);
  g_signal_connect_object (row->button, "toggled", G_CALLBACK (toggled_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (row->box), GTK_WIDGET (row->button));
  gtk_box_append (GTK_BOX (row->box), GTK_WIDGET (row->text));
  gtk_box_append (GTK_BOX (self->column), row->box);
}

static void
bs_schedule_choices_init (BsScheduleChoices *self)
{
  self->column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  for (Way way = 0; way < N_WAYS; way++)
    add_row (self, way);
  self->use = gtk_button_new_with_label (_ ("Use these packs"));
  gtk_widget_set_halign (self->use, GTK_ALIGN_START);
  g_signal_connect_object (self->use, "clicked", G_CALLBACK (use_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->column), self->use);
  gtk_widget_set_parent (self->column, GTK_WIDGET (self));
}

GtkWidget *
bs_schedule_choices_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsScheduleChoices *self = g_object_new (BS_TYPE_SCHEDULE_CHOICES, NULL);
  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}
