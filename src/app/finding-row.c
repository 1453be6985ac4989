/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/finding-row.h"

#include <glib/gi18n.h>

#include "app/resources.h"
#include "app/severity-sign.h"
#include "words/words.h"

struct _BsFindingRow
{
  GtkWidget parent_instance;

  /* template */
  BsSeveritySign *sign;
  GtkLabel *severity;
  GtkLabel *title;
  GtkLabel *reason;
  GtkLabel *remedy;
};

G_DEFINE_FINAL_TYPE (BsFindingRow, bs_finding_row, GTK_TYPE_WIDGET)

static void
bs_finding_row_dispose (GObject *object)
{
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL;)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_finding_row_parent_class)->dispose (object);
}

static void
bs_finding_row_class_init (BsFindingRowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_finding_row_dispose;

  g_type_ensure (BS_TYPE_SEVERITY_SIGN);
  gtk_widget_class_set_template_from_resource (widget_class, BS_RESOURCES "/finding-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, reason);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, remedy);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, severity);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, sign);
  gtk_widget_class_bind_template_child (widget_class, BsFindingRow, title);

  gtk_widget_class_set_css_name (widget_class, "findingrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bs_finding_row_init (BsFindingRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
bs_finding_row_new (void)
{
  return g_object_new (BS_TYPE_FINDING_ROW, NULL);
}

/* "Defect shows: B, place 4" */
static char *
write_title (BsFindingItem *item)
{
  const BsFinding *finding = bs_finding_item_get_finding (item);
  const BsLamination *lamination = bs_finding_item_get_lamination (item);
  const char *title = bs_words_finding_title (finding);

  if (lamination == NULL)
    return g_strdup (title);
  /* Translators: what was found, the lamination's label and its place in the slab. */
  return g_strdup_printf (_ ("%s: %s, place %d"), title,
                          lamination->label != NULL ? lamination->label : lamination->id,
                          finding->place + 1);
}

void
bs_finding_row_show (BsFindingRow *self, BsFindingItem *item)
{
  g_return_if_fail (BS_IS_FINDING_ROW (self));
  g_return_if_fail (BS_IS_FINDING_ITEM (item));

  const BsFinding *finding = bs_finding_item_get_finding (item);
  const BsResults *results = bs_finding_item_get_results (item);
  const char *severity = bs_words_severity (finding->severity);
  g_autofree char *title = write_title (item);
  g_autofree char *reason = bs_words_finding_reason (finding, results);
  g_autofree char *remedy = bs_words_finding_remedy (finding, results);
  g_autofree char *label = g_strdup_printf ("%s. %s. %s", severity, title, reason);

  bs_severity_sign_show (self->sign, finding->severity);
  gtk_label_set_text (self->severity, severity);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->reason, reason);
  gtk_label_set_text (self->remedy, remedy);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void
bs_finding_row_set_open (BsFindingRow *self, gboolean is_open)
{
  g_return_if_fail (BS_IS_FINDING_ROW (self));

  gtk_widget_set_visible (GTK_WIDGET (self->remedy), is_open);
}
