// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/screening.h"

#include <QFrame>

#include <optional>
#include <vector>

class QAbstractButton;
class QButtonGroup;
class QLabel;
class QLineEdit;

namespace quadrille::app
{

class PlacesField;

/// Widths of the columns behind the wording, at 100 %.
namespace question_column
{
inline constexpr int number = 26;
inline constexpr int answer = 44;
inline constexpr int notKnown = 70;
inline constexpr int weight = 152;
inline constexpr int blocks = 132;
inline constexpr int sign = 18;        ///< the class where there is no room for its name
inline constexpr int leastWhole = 740; ///< a narrower row leaves names away
} // namespace question_column

/// One question: its number, wording and class, the three answers, the note, where it lies. Y, N
/// and K answer, Enter goes on, the arrows go up and down.
class QuestionRow : public QFrame
{
    Q_OBJECT

public:
    QuestionRow(std::size_t index, const ScreeningQuestion& question, QWidget* parent);

    struct Shown {
        std::optional<ScreeningAnswer> answer;
        std::optional<ScreeningAnswer> last; ///< what was said in the screening before
        bool compares = false;               ///< there is a screening before
        bool changed = false;                ///< it differs from the one before
        bool editable = true;
    };
    void show(const Shown& shown);
    const ScreeningQuestion& question() const { return m_question; }
    /// Whether Tab stops here; one row of the page at a time.
    void setCurrent(bool current);
    /// Leaves the class's name and what it blocks to the tip, for the wording to have room.
    void setNarrow(bool narrow);
    /// The last of its fields in the order of the Tab key.
    QWidget* lastStop() const;

signals:
    void answered(quadrille::Answer answer);
    void noteChanged(const QString& note);
    void placesChanged(const std::vector<quadrille::BodyPlace>& places);
    void nextRequested();
    void previousRequested();
    void focused();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    QAbstractButton* answerButton(Answer answer, const QString& name, int width);
    QWidget* classCell();
    void layOut();
    void connectParts();
    bool needsPlaces() const;
    void goOn();
    QString spokenName() const;

    ScreeningQuestion m_question;
    std::size_t m_index;
    Shown m_shown;
    QLabel* m_number;
    QLabel* m_wording;
    QLabel* m_last;
    QButtonGroup* m_answers;
    QLineEdit* m_note;
    PlacesField* m_places;
    QLabel* m_blocks;
    QWidget* m_class = nullptr;
    QLabel* m_className = nullptr;
};

} // namespace quadrille::app
