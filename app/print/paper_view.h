// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/print/handout_document.h"

#include <QAbstractScrollArea>

#include <optional>

namespace quadrille::app
{

enum class PaperZoom { pageWidth, wholePage };

/// The pages of a handout as they will lie on paper, one below the other. Page Up and Page Down
/// turn pages, Home and End go to the first and the last, arrows scroll.
class PaperView : public QAbstractScrollArea
{
    Q_OBJECT

public:
    explicit PaperView(QWidget* parent = nullptr);

    /// Shows another handout from its first page; nothing shows bare desk.
    void setDocument(std::optional<HandoutDocument> document);
    const std::optional<HandoutDocument>& document() const { return m_document; }
    void setZoom(PaperZoom zoom);
    PaperZoom zoom() const { return m_zoom; }
    int pageCount() const;
    /// The page in view, from 0.
    int currentPage() const { return m_current; }
    /// Brings the upper edge of a page into view; a number outside is the nearest one.
    void goToPage(int page);

signals:
    /// The page in view, or the number of pages, is another one.
    void pageChanged();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    double scale() const;
    /// Where a page lies below the upper edge of the first one's surroundings, px.
    QRectF pageRect(int page) const;
    void fit();
    void noticePage();

    std::optional<HandoutDocument> m_document;
    PaperZoom m_zoom = PaperZoom::pageWidth;
    int m_current = 0;
};

} // namespace quadrille::app
