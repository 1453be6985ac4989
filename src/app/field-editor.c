/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/field-editor.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/drop-down.h"
#include "app/wood-choice.h"
#include "core/money.h"
#include "core/text.h"
#include "core/units.h"
#include "plan/edits.h"

#define LINES_HEIGHT 108 /* px: six lines */

struct _BsFieldEditor
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *control; /* GtkEntry, GtkTextView, GtkDropDown or GtkSwitch */
  GtkWidget *frame;   /* what scrolls a GtkTextView, else the control itself */
  GtkWidget *problem; /* GtkLabel: why what was typed is not accepted */

  /* owned */
  BsSession *session;
  BsPlan *shown; /* what the control shows the field of */
  char *id;

  /* borrowed */
  const BsRecord *record;
  const BsField *field;

  gboolean is_refreshing; /* the control changes because the plan did, not the person */
};

G_DEFINE_FINAL_TYPE (BsFieldEditor, bs_field_editor, GTK_TYPE_WIDGET)

static gboolean
is_typed (const BsField *field)
{
  return field->kind == BS_FIELD_NUMBER || field->kind == BS_FIELD_WHOLE
         || field->kind == BS_FIELD_TEXT || field->kind == BS_FIELD_LINES
         || field->kind == BS_FIELD_MONEY || field->kind == BS_FIELD_OWN;
}

static gboolean
is_text (const BsField *field)
{
  return field->kind == BS_FIELD_TEXT || field->kind == BS_FIELD_LINES
         || field->kind == BS_FIELD_WOOD;
}

static char *
format_money (const BsField *field, gint64 minor, const char *currency)
{
  if (minor == 0)
    return g_strdup ("");
  return field->without_unit ? bs_money_format_number ((double)minor, currency)
                             : bs_money_format ((double)minor, currency);
}

static char *
format_value (const BsField *field, const char *record, const BsPlan *plan)
{
  gconstpointer place = record + field->offset;
  BsUnitSystem units = plan->units;

  if (field->kind == BS_FIELD_OWN)
    return field->format (record, plan);
  if (field->kind == BS_FIELD_MONEY)
    return format_money (field, *(const gint64 *)place, plan->currency);
  if (is_text (field))
    return g_strdup (*(char *const *)place != NULL ? *(char *const *)place : "");

  double value = field->kind == BS_FIELD_WHOLE ? *(const int *)place : *(const double *)place;
  if (isnan (value))
    return g_strdup ("");
  return field->without_unit ? bs_units_format_number (value, field->limit->quantity, units)
                             : bs_units_format (value, field->limit->quantity, units);
}

/* Under a row of fields it says which one is meant. */
static char *
describe_problem (BsFieldEditor *self, const char *sentence)
{
  if (gtk_widget_get_parent (self->problem) == GTK_WIDGET (self))
    return g_strdup (sentence);
  /* Translators: the name of a field, and what is wrong with what was typed there. */
  return g_strdup_printf (_ ("%s: %s"), _ (self->field->label), sentence);
}

static void
show_problem (BsFieldEditor *self, const char *sentence)
{
  if (sentence == NULL && !gtk_widget_get_visible (self->problem))
    return;
  g_autofree char *text = sentence != NULL ? describe_problem (self, sentence) : g_strdup ("");
  gtk_label_set_text (GTK_LABEL (self->problem), text);
  gtk_widget_set_visible (self->problem, sentence != NULL);
  if (sentence != NULL)
    gtk_widget_add_css_class (self->control, "error");
  else
    gtk_widget_remove_css_class (self->control, "error");
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (self->control), GTK_ACCESSIBLE_STATE_INVALID,
      sentence != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

/* An entry is laid out and drawn anew for the same text too. */
static void
show_text (BsFieldEditor *self, const char *text)
{
  if (self->field->kind == BS_FIELD_LINES)
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->control)), text, -1);
  else if (!g_str_equal (text, gtk_editable_get_text (GTK_EDITABLE (self->control))))
    gtk_editable_set_text (GTK_EDITABLE (self->control), text);
}

/* The caller's, without the blanks around it. */
static char *
dup_text (BsFieldEditor *self)
{
  if (self->field->kind != BS_FIELD_LINES)
    return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->control))));

  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->control));
  GtkTextIter start, end;
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return g_strstrip (gtk_text_buffer_get_text (buffer, &start, &end, FALSE));
}

static void
refresh (BsFieldEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  const char *record = self->record->find (plan, self->id);

  gtk_widget_set_sensitive (GTK_WIDGET (self), record != NULL);
  if (record == NULL)
    return;

  gconstpointer place = record + self->field->offset;
  self->is_refreshing = TRUE;
  if (is_typed (self->field))
    {
      g_autofree char *text = format_value (self->field, record, plan);
      show_text (self, text);
    }
  else if (self->field->kind == BS_FIELD_WOOD)
    bs_wood_choice_show (GTK_DROP_DOWN (self->control), plan, *(char *const *)place);
  else if (self->field->kind == BS_FIELD_CHOICE)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control),
                                (guint)(*(const int *)place - self->field->first_choice));
  else
    gtk_switch_set_active (GTK_SWITCH (self->control), *(const gboolean *)place);
  self->is_refreshing = FALSE;
  show_problem (self, NULL);
}

/* The results change at every step of a drag; the plan itself does not. */
static void
session_changed_cb (BsFieldEditor *self, BsSession *session)
{
  g_assert (BS_IS_FIELD_EDITOR (self));
  g_assert (BS_IS_SESSION (session));

  BsPlan *plan = bs_session_get_plan (session);
  if (plan == self->shown)
    return;
  g_clear_pointer (&self->shown, bs_plan_unref);
  self->shown = bs_plan_ref (plan);
  refresh (self);
}

/* Makes a copy of the plan, in which the record was written to, the present one. */
static void
push_copy (BsFieldEditor *self, BsPlan *copy)
{
  /* Translators: %s is the name of a field, for instance Length */
  g_autofree char *label = g_strdup_printf (_ ("Change of “%s”"), _ (self->field->label));
  g_autoptr (BsPlan) fitted = bs_edit_fit (copy);
  bs_session_push (self->session, fitted, label, NULL);
}

static void
push_value (BsFieldEditor *self, double number, const char *text)
{
  g_autoptr (BsPlan) copy = bs_plan_copy (bs_session_get_plan (self->session));
  char *record = self->record->edit (copy, self->id);
  gpointer place = record + self->field->offset;

  if (is_text (self->field))
    bs_text_set (place, text);
  else if (self->field->kind == BS_FIELD_NUMBER)
    *(double *)place = number;
  else if (self->field->kind == BS_FIELD_MONEY)
    *(gint64 *)place = (gint64)number;
  else
    *(int *)place = (int)number;
  push_copy (self, copy);
}

static void
take_own (BsFieldEditor *self, const char *text)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);
  g_autoptr (GError) error = NULL;

  if (self->field->parse (self->record->edit (copy, self->id), plan, text, &error))
    push_copy (self, copy);
  else
    show_problem (self, error->message);
}

static void
take_money (BsFieldEditor *self, const char *text)
{
  const char *currency = bs_session_get_plan (self->session)->currency;
  g_autoptr (GError) error = NULL;
  double minor = 0.0;

  if (*text != '\0' && !bs_money_parse (text, currency, &minor, &error))
    show_problem (self, error->message);
  else if (!bs_limit_contains (&bs_limits.price, minor))
    show_problem (self, _ ("Expected is a price that is not negative and not far too large."));
  else
    push_value (self, minor, NULL);
}

static char *
describe_range (const BsField *field, BsUnitSystem units)
{
  g_autofree char *least = bs_units_format (field->limit->least, field->limit->quantity, units);
  g_autofree char *most = bs_units_format (field->limit->most, field->limit->quantity, units);
  return g_strdup_printf (_ ("Expected is something from %s to %s."), least, most);
}

static void
take_number (BsFieldEditor *self, const char *text)
{
  BsUnitSystem units = bs_session_get_plan (self->session)->units;
  const BsLimit *limit = self->field->limit;
  g_autoptr (GError) error = NULL;
  double value = NAN;

  if (*text == '\0' && self->field->may_be_unknown)
    push_value (self, NAN, NULL);
  else if (!bs_units_parse (text, limit->quantity, units, &value, &error))
    show_problem (self, error->message);
  else if (!bs_limit_contains (limit, value))
    {
      g_autofree char *range = describe_range (self->field, units);
      show_problem (self, range);
    }
  else
    push_value (self, value, NULL);
}

/* What was not touched is not taken over: the text may be rounded. */
static void
take_text (BsFieldEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  const char *record = self->record->find (plan, self->id);
  if (record == NULL)
    return;

  g_autofree char *typed = dup_text (self);
  g_autofree char *present = format_value (self->field, record, plan);
  if (g_str_equal (typed, present))
    refresh (self);
  else if (self->field->kind == BS_FIELD_OWN)
    take_own (self, typed);
  else if (self->field->kind == BS_FIELD_MONEY)
    take_money (self, typed);
  else if (is_text (self->field))
    push_value (self, 0.0, typed);
  else
    take_number (self, typed);
}

/* Enter takes the value and goes on to the field below, as in a column of figures. */
static void
activate_cb (BsFieldEditor *self, GtkEntry *entry)
{
  take_text (self);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  if (root != NULL && !gtk_widget_get_visible (self->problem))
    gtk_widget_child_focus (GTK_WIDGET (root), GTK_DIR_DOWN);
}

static void
focus_leave_cb (BsFieldEditor *self, GtkEventControllerFocus *controller)
{
  if (!gtk_widget_in_destruction (GTK_WIDGET (self)))
    take_text (self);
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *args, gpointer data)
{
  refresh (BS_FIELD_EDITOR (widget));
  return GDK_EVENT_STOP;
}

static void
chosen_cb (BsFieldEditor *self, GParamSpec *pspec, GtkDropDown *control)
{
  guint chosen = gtk_drop_down_get_selected (control);
  if (!self->is_refreshing && chosen != GTK_INVALID_LIST_POSITION)
    push_value (self, (int)chosen + self->field->first_choice, NULL);
}

/* The plan carries the figures of every wood that it uses. */
static void
wood_chosen_cb (BsFieldEditor *self, GParamSpec *pspec, GtkDropDown *control)
{
  BsWood *wood = bs_wood_choice_get (control);

  if (self->is_refreshing || wood == NULL)
    return;
  g_autoptr (BsPlan) copy = bs_plan_copy (bs_session_get_plan (self->session));
  if (bs_plan_find_wood (copy, wood->id) == NULL)
    g_ptr_array_add (copy->woods, bs_wood_ref (wood));
  char *record = self->record->edit (copy, self->id);
  bs_text_set ((GRefString **)(gpointer)(record + self->field->offset), wood->id);
  push_copy (self, copy);
}

static void
switched_cb (BsFieldEditor *self, GParamSpec *pspec, GtkSwitch *control)
{
  if (!self->is_refreshing)
    push_value (self, gtk_switch_get_active (control), NULL);
}

/* Enough for "−3 25/32 in", "0.5" and "37 lb/1000 ft²". */
static int
count_chars (const BsField *field)
{
  if (field->chars > 0)
    return field->chars;
  if (field->kind == BS_FIELD_MONEY || field->kind == BS_FIELD_OWN)
    return 10;
  if (field->kind == BS_FIELD_TEXT || field->without_unit)
    return 6;
  switch (field->limit->quantity)
    {
    case BS_QUANTITY_PRESSURE: /* a stiffness in psi */
      return 12;
    case BS_QUANTITY_SPREAD:
      return 13;
    case BS_QUANTITY_COUNT:
    case BS_QUANTITY_RATIO:
      return 6;
    default:
      return 10;
    }
}

static void
take_at_leave (BsFieldEditor *self, GtkWidget *control)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_leave_cb), self);
  gtk_widget_add_controller (control, focus);
}

static GtkWidget *
new_entry (BsFieldEditor *self)
{
  GtkWidget *entry = gtk_entry_new ();
  gboolean is_wide
      = is_text (self->field) || (self->field->kind == BS_FIELD_OWN && !self->field->is_figure);
  int chars = count_chars (self->field);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), is_wide ? 24 : chars);
  if (!is_wide)
    gtk_editable_set_alignment (GTK_EDITABLE (entry), 1.0f);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (activate_cb), self);
  take_at_leave (self, entry);
  return entry;
}

/* Tab leaves it, as any other field. */
static GtkWidget *
new_lines (BsFieldEditor *self)
{
  GtkWidget *lines = gtk_text_view_new ();

  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (lines), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (lines), FALSE);
  take_at_leave (self, lines);
  return lines;
}

static GtkWidget *
new_frame (GtkWidget *lines)
{
  GtkWidget *frame = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (frame), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (frame), LINES_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (frame), lines);
  return frame;
}

static GtkWidget *
new_drop_down (BsFieldEditor *self)
{
  GtkStringList *names = gtk_string_list_new (NULL);
  for (const char *const *choice = self->field->choices; *choice != NULL; choice++)
    gtk_string_list_append (names, self->field->choices_context != NULL
                                       ? g_dpgettext2 (NULL, self->field->choices_context, *choice)
                                       : _ (*choice));

  GtkWidget *control = gtk_drop_down_new (G_LIST_MODEL (names), NULL);
  g_signal_connect_swapped (control, "notify::selected", G_CALLBACK (chosen_cb), self);
  return control;
}

static GtkWidget *
new_wood_choice (BsFieldEditor *self)
{
  GtkWidget *control = bs_wood_choice_new ();
  g_signal_connect_swapped (control, "notify::selected", G_CALLBACK (wood_chosen_cb), self);
  return control;
}

static GtkWidget *
new_switch (BsFieldEditor *self)
{
  GtkWidget *control = gtk_switch_new ();
  gtk_widget_set_halign (control, GTK_ALIGN_START);
  g_signal_connect_swapped (control, "notify::active", G_CALLBACK (switched_cb), self);
  return control;
}

static void
build_control (BsFieldEditor *self)
{
  if (self->field->kind == BS_FIELD_LINES)
    self->control = new_lines (self);
  else if (is_typed (self->field))
    self->control = new_entry (self);
  else if (self->field->kind == BS_FIELD_WOOD)
    self->control = new_wood_choice (self);
  else
    self->control = self->field->kind == BS_FIELD_CHOICE ? new_drop_down (self) : new_switch (self);

  self->frame = self->field->kind == BS_FIELD_LINES ? new_frame (self->control) : self->control;
  gtk_widget_set_parent (self->frame, GTK_WIDGET (self));
  gtk_widget_insert_before (self->frame, GTK_WIDGET (self), self->problem);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->control),
                                  GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, self->problem, NULL, -1);
  if (GTK_IS_DROP_DOWN (self->control))
    bs_drop_down_set_name (GTK_DROP_DOWN (self->control), _ (self->field->label));
  else
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->control), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    _ (self->field->label), -1);
  if (self->field->hint != NULL)
    gtk_widget_set_tooltip_text (self->control, _ (self->field->hint));
}

static void
bs_field_editor_dispose (GObject *object)
{
  BsFieldEditor *self = BS_FIELD_EDITOR (object);

  self->control = NULL;
  g_clear_pointer (&self->frame, gtk_widget_unparent);
  if (self->problem != NULL && gtk_widget_get_parent (self->problem) == GTK_WIDGET (self))
    gtk_widget_unparent (self->problem);
  g_clear_object (&self->problem);
  g_clear_object (&self->session);
  g_clear_pointer (&self->shown, bs_plan_unref);
  G_OBJECT_CLASS (bs_field_editor_parent_class)->dispose (object);
}

static void
bs_field_editor_finalize (GObject *object)
{
  BsFieldEditor *self = BS_FIELD_EDITOR (object);

  g_clear_pointer (&self->id, g_free);
  G_OBJECT_CLASS (bs_field_editor_parent_class)->finalize (object);
}

static void
bs_field_editor_class_init (BsFieldEditorClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_field_editor_dispose;
  object_class->finalize = bs_field_editor_finalize;

  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "field");
}

static void
bs_field_editor_init (BsFieldEditor *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);

  self->problem = g_object_ref_sink (gtk_label_new (NULL));
  gtk_widget_add_css_class (self->problem, "problem");
  gtk_label_set_wrap (GTK_LABEL (self->problem), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->problem), 24);
  gtk_label_set_xalign (GTK_LABEL (self->problem), 0.0f);
  gtk_widget_set_visible (self->problem, FALSE);
  gtk_widget_set_parent (self->problem, GTK_WIDGET (self));
}

GtkWidget *
bs_field_editor_new (BsSession *session, const BsRecord *record, const BsField *field,
                     const char *id)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsFieldEditor *self = g_object_new (BS_TYPE_FIELD_EDITOR, NULL);
  self->session = g_object_ref (session);
  self->record = record;
  self->field = field;
  build_control (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed_cb), self,
                           G_CONNECT_SWAPPED);
  bs_field_editor_set_id (self, id);
  return GTK_WIDGET (self);
}

GtkWidget *
bs_field_editor_give_problem (BsFieldEditor *self)
{
  g_return_val_if_fail (BS_IS_FIELD_EDITOR (self), NULL);

  gtk_widget_unparent (self->problem);
  gtk_label_set_max_width_chars (GTK_LABEL (self->problem), -1);
  return self->problem;
}

void
bs_field_editor_set_id (BsFieldEditor *self, const char *id)
{
  g_return_if_fail (BS_IS_FIELD_EDITOR (self));

  g_autofree char *old = self->id;
  self->id = g_strdup (id);
  g_clear_pointer (&self->shown, bs_plan_unref);
  self->shown = bs_plan_ref (bs_session_get_plan (self->session));
  refresh (self);
}
