// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/chosen_sheet.h"

#include "app/charts/chart_view.h"
#include "app/charts/measurement_chart.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/measurements/measurement_form.h"
#include "app/measurements/table_setup.h"
#include "app/measurements/values_model.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"
#include "app/words/measurement_text.h"
#include "app/words/trade_words.h"

#include "db/measurements.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <iterator>

namespace quadrille::app
{

namespace
{

constexpr std::array valueShares{26, 13, 26, 35};
constexpr int leastChartHeight = 130;
/// Room for the numbers of the axes and, at the right, for the name of each side.
constexpr QMargins chartMargins{44, 12, 96, 34};

QPushButton* smallAct(const QString& text, const char* name, QWidget* parent)
{
    auto* button = new QPushButton(text, parent);
    button->setObjectName(QLatin1String(name));
    return button;
}

MeasuredLine lineOf(const MeasurementSeries& series, Side side, bool compared,
                    const QuantityText& text)
{
    MeasuredLine line;
    line.name = sideName(side);
    line.compared = compared;
    for (const Measurement& one : series.values) {
        if (one.side == side) {
            line.points.push_back({one.measuredOn, static_cast<double>(one.thousandths) / 1e3,
                                   measuredText(one.kind, one.thousandths, one.unit, text)});
        }
    }
    return line;
}

} // namespace

ChosenSheet::ChosenSheet(const Services& services, QWidget* parent)
    : QFrame(parent)
    , m_services(services)
    , m_values(new ValuesModel(services.text, this))
    , m_table(new QTableView(this))
    , m_title(new QLabel(this))
    , m_taken(new QLabel(this))
    , m_thresholds(new QLabel(this))
    , m_chart(new ChartView(this))
    , m_correct(smallAct(tr("C&orrect…"), "correctMeasurement", this))
    , m_withdraw(smallAct(tr("&Withdraw…"), "withdrawMeasurement", this))
{
    setRole(*this, Role::sheet);
    layOut();
    connectAll();
}

void ChosenSheet::layOut()
{
    setUpTable(*m_table, *m_values, valueShares);
    m_table->setObjectName(QStringLiteral("measuredValues"));
    setRole(*m_title, Role::strongText);
    m_title->setObjectName(QStringLiteral("chosenKind"));
    m_title->setMinimumWidth(60);
    m_title->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    setRole(*m_thresholds, Role::secondLineText);
    m_thresholds->setObjectName(QStringLiteral("thresholds"));
    m_thresholds->setWordWrap(true);
    m_chart->setObjectName(QStringLiteral("measurementChart"));
    m_chart->setMinimumHeight(leastChartHeight);
    m_chart->setPlotMargins(chartMargins);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(space::medium, space::tiny, space::small, space::tiny);
    head->setSpacing(space::close);
    head->addWidget(m_title, 1);
    head->addWidget(m_correct);
    head->addWidget(m_withdraw);
    auto* halves = new QHBoxLayout;
    halves->setSpacing(space::close);
    halves->addWidget(m_chart, 5);
    halves->addWidget(m_table, 7);
    setRole(*m_taken, Role::captionText);
    m_taken->setObjectName(QStringLiteral("taken"));
    m_taken->setWordWrap(true);
    auto* below = new QVBoxLayout;
    below->setContentsMargins(space::medium, space::tiny, space::medium, 0);
    below->addWidget(m_taken);
    below->addWidget(m_thresholds);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(1, 1, 1, space::close);
    layout->setSpacing(0);
    layout->addLayout(head);
    layout->addLayout(halves, 1);
    layout->addLayout(below);
    setTabOrder(m_table, m_correct);
    setTabOrder(m_correct, m_withdraw);
}

void ChosenSheet::connectAll()
{
    connect(m_correct, &QPushButton::clicked, this, &ChosenSheet::correct);
    connect(m_withdraw, &QPushButton::clicked, this, &ChosenSheet::withdraw);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &ChosenSheet::refreshActs);
    connect(m_table, &QTableView::activated, this, &ChosenSheet::correct);
    m_table->installEventFilter(this);
}

void ChosenSheet::show(const std::optional<Content>& content)
{
    const bool same = m_content && content && isSameSeries(m_content->series, content->series);
    const int row = same ? std::max(0, m_table->currentIndex().row()) : 0;
    m_content = content;
    std::vector<Measurement> values;
    if (content) {
        const MeasurementSeries& series = content->series;
        std::ranges::copy_if(content->all, std::back_inserter(values),
                             [&](const Measurement& one) { return isOfSeries(one, series); });
    }
    m_values->setValues(values);
    if (m_values->rowCount() > 0) {
        m_table->setCurrentIndex(m_values->index(std::min(row, m_values->rowCount() - 1), 0));
    }
    if (content) {
        m_title->setText(seriesName(content->series));
        m_title->setToolTip(m_title->text());
        m_table->setAccessibleName(tr("Every value of %1").arg(m_title->text()));
        showChart();
        showThresholds();
    }
    refreshActs();
}

void ChosenSheet::showChart()
{
    const MeasurementSeries& series = m_content->series;
    MeasurementsToShow shown;
    shown.name = seriesName(series);
    shown.courseStart = m_content->courseStart;
    shown.weeks = m_content->weeks;
    shown.textFactor = appliedFactor();
    const Side first = m_content->treated == TreatedSide::left ? Side::left : Side::right;
    const Side second = first == Side::left ? Side::right : Side::left;
    for (const Side side : {first, second, Side::middle}) {
        MeasuredLine line = lineOf(series, side, side == second, m_services.text);
        if (!line.points.empty()) {
            shown.lines.push_back(std::move(line));
        }
    }
    for (const SymmetryOn& index : symmetryOf(series, m_content->treated)) {
        shown.notes.push_back({index.day, m_services.text.percent(index.percent / 100.0, 0)});
    }
    if (isScoreOfTen(series.kind, series.unit)) {
        constexpr double scaleEnd = 10.0;
        shown.scaleEnd = scaleEnd;
    }
    m_chart->setAccessibleName(tr("Course of %1").arg(shown.name));
    m_chart->setSpec(measurementChart(shown, m_services.text));
}

QString ChosenSheet::shareSentence(const Measurement& stimulated) const
{
    const auto share = shareOfMaximum(stimulated, m_content->all);
    if (!share) {
        return tr("No voluntary torque of the same muscle, side and method up to that day: measure "
                  "it to see the share.");
    }
    const auto value = [&](const Measurement& one) {
        return measuredText(one.kind, one.thousandths, one.unit, m_services.text);
    };
    return tr("%1 is %2 of the voluntary torque of %3 on %4.")
        .arg(value(stimulated), m_services.text.percent(share->percent / 100.0),
             value(share->maximum), m_services.text.date(share->maximum.measuredOn));
}

void ChosenSheet::showThresholds()
{
    const MeasurementKind* kind = measurementKind(m_content->series.kind);
    if (kind == nullptr) {
        m_thresholds->clear();
        return;
    }
    const SideSummary summary = summaryOf(m_content->series, m_content->side);
    QStringList sentences = thresholdSentences(*kind, summary.change, m_services.text);
    if (m_content->series.kind == stimulatedTorque && summary.latest) {
        sentences.prepend(shareSentence(*summary.latest));
    }
    m_thresholds->setText(sentences.join(QLatin1Char('\n')));
}

/// With what the chosen value was taken, and by whom.
void ChosenSheet::showTaken()
{
    const QModelIndex row = m_table->currentIndex();
    if (!row.isValid()) {
        m_taken->clear();
        return;
    }
    const Measurement& one = m_values->valueAt(row.row());
    const QString value =
        tr("%1 on %2", "value, day")
            .arg(measuredText(one.kind, one.thousandths, one.unit, m_services.text),
                 m_services.text.date(one.measuredOn));
    const QString device =
        one.device.empty() ? tr("no device noted") : QString::fromStdString(one.device);
    m_taken->setText(tr("%1: %2, recorded by %3", "value, device, who")
                         .arg(value, device, QString::fromStdString(one.recordedByName)));
}

void ChosenSheet::refreshActs()
{
    const QModelIndex row = m_table->currentIndex();
    const bool can = row.isValid() && m_services.store.isWritable();
    const bool withdrawn = row.isValid() && m_values->valueAt(row.row()).withdrawn;
    showTaken();
    const bool known = m_content && measurementKind(m_content->series.kind) != nullptr;
    m_correct->setEnabled(can && known && !withdrawn);
    m_withdraw->setEnabled(can);
    m_withdraw->setText(withdrawn ? tr("&Restore") : tr("&Withdraw…"));
}

void ChosenSheet::correct()
{
    const QModelIndex row = m_table->currentIndex();
    if (row.isValid() && m_correct->isEnabled()) {
        MeasurementForm(m_services, m_values->valueAt(row.row()), this).exec();
        m_table->setFocus(Qt::OtherFocusReason);
    }
}

void ChosenSheet::withdraw()
{
    const QModelIndex row = m_table->currentIndex();
    if (!row.isValid() || !m_withdraw->isEnabled()) {
        return;
    }
    Measurement measurement = m_values->valueAt(row.row());
    const QString question =
        tr("Withdraw %1 of %2? It stays readable, marked as withdrawn, and counts no more.")
            .arg(measuredText(measurement.kind, measurement.thousandths, measurement.unit,
                              m_services.text),
                 m_services.text.date(measurement.measuredOn));
    if (!measurement.withdrawn && !m_services.prompts.confirm(this, question, tr("Withdraw"))) {
        return;
    }
    measurement.withdrawn = !measurement.withdrawn;
    const auto saved = m_services.store.write(
        m_services.author, measurement.withdrawn ? "withdraw measurement" : "restore measurement",
        [&](db::Writing& writing) { db::changeMeasurement(writing, measurement); });
    if (!saved) {
        emit said(errorText(saved.error(), m_services.text));
    }
    emit m_services.events.measurementsChanged(*measurement.course);
    m_table->setFocus(Qt::OtherFocusReason);
}

/// Delete in the table: what is withdrawn is the line that is chosen.
bool ChosenSheet::eventFilter(QObject* watched, QEvent* event)
{
    const bool isKey = watched == m_table && event->type() == QEvent::KeyPress;
    if (isKey && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
        withdraw();
        return true;
    }
    return QFrame::eventFilter(watched, event);
}

} // namespace quadrille::app
