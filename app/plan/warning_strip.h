// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/finding.h"

#include <QFrame>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;

namespace quadrille::app
{

/// A finding and where on the page it belongs.
struct PlacedFinding {
    Finding finding;
    std::optional<std::size_t> site =
        std::nullopt;        ///< of the current block; nothing for the block itself
    QString remedyText = {}; ///< "Set 400 µs"; empty when no single act mends it
};

/// The strip above the sheets: the gravest finding with its source and one act that mends it; the
/// others follow on request. Hidden when there is nothing to say.
class WarningStrip : public QFrame
{
    Q_OBJECT

public:
    WarningStrip(const QuantityText& text, QWidget* parent);

    /// The gravest first. `problem` is a sentence about text that is no value; it goes before all
    /// findings.
    void setFindings(std::vector<PlacedFinding> findings, const QString& problem);
    /// Offers to fit all settings to the unit; one setting alone has its own remedy.
    void offerFit(bool offered);
    /// Shows the first finding of a field, if there is one.
    void showField(Field field);

signals:
    /// Carry out the remedy of this finding.
    void remedyRequested(const quadrille::app::PlacedFinding& finding);
    void fitRequested();

private:
    void showCurrent();

    const QuantityText& m_text;
    std::vector<PlacedFinding> m_findings;
    QString m_problem;
    std::size_t m_current = 0;
    QLabel* m_what;
    QLabel* m_more;
    QPushButton* m_remedy;
    QPushButton* m_fit;
    bool m_fitOffered = false;
    QPushButton* m_next;
};

} // namespace quadrille::app
