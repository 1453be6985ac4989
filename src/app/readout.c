/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/readout.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/live-pressure.h"
#include "app/number-row.h"
#include "core/forecast.h"
#include "core/units.h"
#include "words/flattening.h"

/* Which workings are shown, in this order. */
enum
{
  ROW_THICKNESS,
  ROW_PRESSURE,
  ROW_CLAMPS,
  ROW_TIME,
  ROW_ORDER,
  N_ROWS
};

/* The pressure is no result: see explain_pressure. */
static const BsWorking *
get_working (const BsResults *results, guint row)
{
  const BsWorking *const workings[N_ROWS] = {
    [ROW_THICKNESS] = &results->why_thickness,
    [ROW_CLAMPS] = &results->why_clamps,
    [ROW_TIME] = &results->why_time,
    [ROW_ORDER] = &results->why_order,
  };

  return workings[row];
}

/* Between and around the numbers, and the least width of one, in pixels. */
#define SPACE 12
#define ROW_WIDTH 140

struct _BsReadout
{
  GtkWidget parent_instance;

  BsSession *session;
  BsNumberRow *rows[N_ROWS];
};

G_DEFINE_FINAL_TYPE (BsReadout, bs_readout, GTK_TYPE_WIDGET)

/* The working of the thickness, with how sure it is as soon as that is known. */
static BsWorking
explain_thickness (BsReadout *self, const BsResults *results)
{
  BsStudy *study = bs_session_get_study (self->session, &bs_study_forecast);
  BsWorking working = results->why_thickness;

  bs_forecast_add_odds (bs_study_is_current (study) ? bs_study_get_result (study) : NULL, &working);
  return working;
}

/* The pressure follows the hand; the first one takes a moment. */
static BsWorking
explain_pressure (BsReadout *self)
{
  const BsPressure *pressure = bs_live_pressure_get (self->session);
  BsWorking working;

  if (pressure != NULL)
    return pressure->why;
  bs_working_init (&working, N_ ("Weakest pressure"), N_ ("Working…"), "", BS_QUANTITY_PRESSURE,
                   NULL);
  return working;
}

/* Beside it, what the adhesive asks for. */
static char *
describe_pressure (const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  g_autofree char *least
      = bs_units_format (plan->adhesive.min_pressure_mpa, BS_QUANTITY_PRESSURE, plan->units);

  /* Translators: a pressure. */
  return g_strdup_printf (_ ("%s wanted"), least);
}

/* Beside the thickness as measured: what it is likely to be at least. */
static char *
describe_sure (BsReadout *self, const BsResults *results)
{
  BsStudy *study = bs_session_get_study (self->session, &bs_study_forecast);
  const BsForecast *forecast = bs_study_is_current (study) ? bs_study_get_result (study) : NULL;

  if (isnan (results->flatten.thickness))
    return NULL;
  return bs_words_sure (forecast != NULL ? &forecast->odds : NULL, results->stack->plan);
}

/* A time alone says little: what matters is what the glue leaves of it. */
static char *
describe_time (const BsResults *results)
{
  double left = results->assembly.left_s;
  g_autofree char *time
      = bs_units_format (fabs (left), BS_QUANTITY_TIME, results->stack->plan->units);

  if (isnan (left) || isnan (results->why_time.value))
    return NULL;
  /* Translators: a time: "3 min 20 s". */
  return g_strdup_printf (left < 0.0 ? _ ("%s too long") : _ ("%s left"), time);
}

static void
changed_cb (BsReadout *self)
{
  g_assert (BS_IS_READOUT (self));

  const BsResults *results = bs_session_get_results (self->session);
  g_autofree char *time_left = describe_time (results);
  g_autofree char *wanted = describe_pressure (results);
  BsWorking thickness = explain_thickness (self, results);
  BsWorking pressure = explain_pressure (self);
  g_autofree char *sure = describe_sure (self, results);
  const char *const notes[N_ROWS]
      = { [ROW_THICKNESS] = sure,
          [ROW_TIME] = time_left,
          [ROW_PRESSURE] = wanted,
          /* Translators: beside a number: the unit of what an order costs. */
          [ROW_ORDER] = results->stack->n > 0 ? _ ("points") : NULL };

  for (guint i = 0; i < N_ROWS; i++)
    {
      const BsWorking *working = i == ROW_THICKNESS  ? &thickness
                                 : i == ROW_PRESSURE ? &pressure
                                                     : get_working (results, i);

      bs_number_row_show (self->rows[i], working, results->stack->plan->units, notes[i]);
    }
}

/* The numbers stand in as many columns as there is room for, each as wide as what stands in it and
 * an equal part of what is left. */
typedef struct
{
  int n;
  int widths[N_ROWS]; /* -1 where no width is known */
} Columns;

static int
measure_column (BsReadout *self, int column, int n)
{
  int most = ROW_WIDTH;

  for (int i = column; i < N_ROWS; i += n)
    {
      int wished;

      gtk_widget_measure (GTK_WIDGET (self->rows[i]), GTK_ORIENTATION_HORIZONTAL, -1, NULL, &wished,
                          NULL, NULL);
      most = MAX (most, wished);
    }
  return most;
}

static Columns
lay_columns (BsReadout *self, int width)
{
  Columns columns = { .n = width < 0 ? 1 : N_ROWS };

  for (;; columns.n--)
    {
      int left = width - SPACE;

      for (int i = 0; i < columns.n; i++)
        {
          columns.widths[i] = measure_column (self, i, columns.n);
          left -= columns.widths[i] + SPACE;
        }
      if (columns.n > 1 && left < 0)
        continue;
      for (int i = 0; i < columns.n; i++)
        columns.widths[i] = width < 0 ? -1 : columns.widths[i] + left / columns.n;
      return columns;
    }
}

/* The height of a line of numbers, from the first on. */
static int
measure_line (BsReadout *self, int first, const Columns *columns)
{
  int most = 0;

  for (int i = first; i < MIN (first + columns->n, N_ROWS); i++)
    {
      int least;

      gtk_widget_measure (GTK_WIDGET (self->rows[i]), GTK_ORIENTATION_VERTICAL,
                          columns->widths[i - first], &least, NULL, NULL, NULL);
      most = MAX (most, least);
    }
  return most;
}

static GtkSizeRequestMode
bs_readout_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static int
measure_width (BsReadout *self)
{
  int most = ROW_WIDTH;

  for (int i = 0; i < N_ROWS; i++)
    {
      int least;

      gtk_widget_measure (GTK_WIDGET (self->rows[i]), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL,
                          NULL, NULL);
      most = MAX (most, least);
    }
  return most + 2 * SPACE;
}

static int
measure_height (BsReadout *self, int width)
{
  Columns columns = lay_columns (self, width);
  int height = SPACE;

  for (int i = 0; i < N_ROWS; i += columns.n)
    height += measure_line (self, i, &columns) + SPACE;
  return height;
}

static void
bs_readout_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                    int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsReadout *self = BS_READOUT (widget);

  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? measure_width (self)
                                                                  : measure_height (self, for_size);
}

static void
bs_readout_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsReadout *self = BS_READOUT (widget);
  Columns columns = lay_columns (self, width);
  int y = SPACE;

  for (int first = 0; first < N_ROWS; first += columns.n)
    {
      int line = measure_line (self, first, &columns);
      int x = SPACE;

      for (int i = first; i < MIN (first + columns.n, N_ROWS); i++)
        {
          int wide = columns.widths[i - first];

          gtk_widget_size_allocate (GTK_WIDGET (self->rows[i]),
                                    &(GtkAllocation){ x, y, wide, line }, -1);
          x += wide + SPACE;
        }
      y += line + SPACE;
    }
}

static void
bs_readout_dispose (GObject *object)
{
  BsReadout *self = BS_READOUT (object);

  for (guint i = 0; i < N_ROWS; i++)
    if (self->rows[i] != NULL)
      gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->rows[i])));
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_readout_parent_class)->dispose (object);
}

static void
bs_readout_class_init (BsReadoutClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_readout_dispose;
  widget_class->get_request_mode = bs_readout_get_request_mode;
  widget_class->measure = bs_readout_measure;
  widget_class->size_allocate = bs_readout_size_allocate;

  gtk_widget_class_set_css_name (widget_class, "readout");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
bs_readout_init (BsReadout *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Numbers"), -1);
  for (guint i = 0; i < N_ROWS; i++)
    {
      GtkWidget *row = bs_number_row_new ();

      self->rows[i] = BS_NUMBER_ROW (row);
      gtk_widget_set_parent (row, GTK_WIDGET (self));
    }
}

void
bs_readout_set_session (BsReadout *self, BsSession *session)
{
  g_return_if_fail (BS_IS_READOUT (self));
  g_return_if_fail (BS_IS_SESSION (session));
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (bs_session_get_study (session, &bs_study_forecast), "changed",
                           G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  bs_live_pressure_connect (session, G_CALLBACK (changed_cb), self);
  changed_cb (self);
}
