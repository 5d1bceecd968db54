// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/handout_page.h"

#include "app/look/roles.h"
#include "app/look/segment_row.h"
#include "app/look/tokens.h"
#include "app/print/handout_document.h"
#include "app/print/paper_view.h"
#include "app/print/pdf_writer.h"
#include "app/print/printing.h"
#include "app/window/prompts.h"
#include "app/words/error_text.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QStackedLayout>
#include <QVBoxLayout>

namespace quadrille::app
{

HandoutPage::HandoutPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_words(services.text)
    , m_stack(new QStackedLayout(this))
    , m_sentence(new QLabel(this))
    , m_plan(new QPushButton(tr("Go to the &plan"), this))
    , m_screening(new QPushButton(tr("Go to the &screening"), this))
    , m_format(new QComboBox(this))
    , m_large(new QCheckBox(tr("&Large print"), this))
    , m_zoom(new SegmentRow(this))
    , m_previous(new QPushButton(tr("Pre&vious"), this))
    , m_next(new QPushButton(tr("Ne&xt"), this))
    , m_pageNumber(new QLabel(this))
    , m_view(new PaperView(this))
    , m_savePdf(new QPushButton(tr("Save PD&F…"), this))
    , m_print(new QPushButton(tr("P&rint…"), this))
{
    m_stack->addWidget(emptySheet());
    m_stack->addWidget(paperSheet());
    m_savePdf->setObjectName(QStringLiteral("savePdf"));
    m_print->setObjectName(QStringLiteral("printHandout"));
    m_print->setToolTip(tr("Ctrl P"));
    setRole(*m_print, Role::primaryButton);
    // Whoever takes the acts shows them.
    m_savePdf->hide();
    m_print->hide();
    connect(m_savePdf, &QPushButton::clicked, this, &HandoutPage::savePdf);
    connect(m_print, &QPushButton::clicked, this, &HandoutPage::print);
    refresh();
}

QWidget* HandoutPage::emptySheet()
{
    auto* sheet = new QWidget(this);
    m_sentence->setObjectName(QStringLiteral("noHandout"));
    m_sentence->setWordWrap(true);
    m_plan->setObjectName(QStringLiteral("goToPlan"));
    m_screening->setObjectName(QStringLiteral("goToScreening"));
    connect(m_plan, &QPushButton::clicked, this, &HandoutPage::planRequested);
    connect(m_screening, &QPushButton::clicked, this, &HandoutPage::screeningRequested);
    auto* layout = new QVBoxLayout(sheet);
    layout->setContentsMargins(space::section, space::section, space::section, space::section);
    layout->setSpacing(space::insideSheet);
    layout->addWidget(m_sentence);
    layout->addWidget(m_plan, 0, Qt::AlignLeft);
    layout->addWidget(m_screening, 0, Qt::AlignLeft);
    layout->addStretch();
    return sheet;
}

QWidget* HandoutPage::paperSheet()
{
    auto* sheet = new QWidget(this);
    m_format->setObjectName(QStringLiteral("paperFormat"));
    m_format->addItem(tr("A4"), static_cast<int>(PaperFormat::a4));
    m_format->addItem(tr("Letter"), static_cast<int>(PaperFormat::letter));
    const bool letter = m_services.text.locale().measurementSystem() == QLocale::ImperialUSSystem;
    m_format->setCurrentIndex(letter ? 1 : 0);
    auto* paper = new QLabel(tr("P&aper"), sheet);
    paper->setBuddy(m_format);
    m_large->setObjectName(QStringLiteral("largePrint"));
    m_zoom->setObjectName(QStringLiteral("zoom"));
    m_zoom->addSegment(static_cast<int>(PaperZoom::pageWidth), tr("Page width"));
    m_zoom->addSegment(static_cast<int>(PaperZoom::wholePage), tr("Whole page"));
    m_previous->setObjectName(QStringLiteral("previousPage"));
    m_previous->setToolTip(tr("Page Up"));
    m_previous->setAccessibleName(tr("Previous page"));
    m_next->setObjectName(QStringLiteral("nextPage"));
    m_next->setToolTip(tr("Page Down"));
    m_next->setAccessibleName(tr("Next page"));
    m_pageNumber->setObjectName(QStringLiteral("pageNumber"));
    m_pageNumber->setAlignment(Qt::AlignCenter);
    m_view->setObjectName(QStringLiteral("paperView"));

    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    bar->setSpacing(space::close);
    bar->addWidget(paper);
    bar->addWidget(m_format);
    bar->addSpacing(space::close);
    bar->addWidget(m_large);
    bar->addStretch();
    bar->addWidget(m_zoom);
    bar->addSpacing(space::close);
    bar->addWidget(m_previous);
    bar->addWidget(m_pageNumber);
    bar->addWidget(m_next);
    auto* layout = new QVBoxLayout(sheet);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addLayout(bar);
    layout->addWidget(m_view, 1);

    connect(m_format, &QComboBox::currentIndexChanged, this, &HandoutPage::layOutPaper);
    connect(m_large, &QCheckBox::toggled, this, &HandoutPage::layOutPaper);
    connect(m_zoom, &SegmentRow::chosenChanged, this,
            [this](int zoom) { m_view->setZoom(static_cast<PaperZoom>(zoom)); });
    connect(m_previous, &QPushButton::clicked, this,
            [this] { m_view->goToPage(m_view->currentPage() - 1); });
    connect(m_next, &QPushButton::clicked, this,
            [this] { m_view->goToPage(m_view->currentPage() + 1); });
    connect(m_view, &PaperView::pageChanged, this, &HandoutPage::showPageNumber);
    return sheet;
}

PaperChoice HandoutPage::choice() const
{
    return {static_cast<PaperFormat>(m_format->currentData().toInt()),
            m_large->isChecked() ? PrintSize::large : PrintSize::normal};
}

QList<QWidget*> HandoutPage::acts() const
{
    return {m_savePdf, m_print};
}

void HandoutPage::setContent(const std::optional<Result<HandoutContent>>& content)
{
    const auto printable = content && *content ? std::optional(**content) : std::nullopt;
    const QString blocked =
        content && !*content ? errorText(content->error(), m_services.text) : QString();
    if (printable == m_content && blocked == m_blocked) {
        return;
    }
    m_content = printable;
    m_blocked = blocked;
    refresh();
}

void HandoutPage::refresh()
{
    const bool printable = m_content && !m_content->cards.empty();
    m_sentence->setText(!m_blocked.isEmpty() ? m_blocked
                        : m_content          ? m_words.planIsOver(*m_content)
                                             : tr("No plan issued yet. Issue the plan first."));
    m_plan->setVisible(m_blocked.isEmpty());
    m_screening->setVisible(!m_blocked.isEmpty());
    m_stack->setCurrentIndex(printable ? 1 : 0);
    m_savePdf->setEnabled(printable);
    m_print->setEnabled(printable);
    layOutPaper();
}

void HandoutPage::layOutPaper()
{
    const bool printable = m_content && !m_content->cards.empty();
    m_view->setDocument(printable ? std::optional(HandoutDocument(m_words.of(*m_content), choice()))
                                  : std::nullopt);
}

void HandoutPage::showPageNumber()
{
    const int page = m_view->currentPage();
    const int pages = m_view->pageCount();
    const QString number = pages > 0 ? HandoutWords::pageOf(page + 1, pages) : QString();
    m_pageNumber->setText(number);
    m_previous->setEnabled(page > 0);
    m_next->setEnabled(page + 1 < pages);
    m_view->setAccessibleName(tr("Handout, %1").arg(number));
    m_view->setAccessibleDescription(pages > 0 ? m_view->document()->pageText(page) : QString());
}

void HandoutPage::focusFirst()
{
    if (m_view->document()) {
        m_view->setFocus();
    } else {
        (m_blocked.isEmpty() ? m_plan : m_screening)->setFocus();
    }
}

QString HandoutPage::suggestedName() const
{
    QString reference = QString::fromStdString(m_content->patientReference);
    for (QChar& c : reference) {
        if (!c.isLetterOrNumber()) {
            c = QLatin1Char('-');
        }
    }
    return tr("handout-%1-plan-%2.pdf", "name of a file")
        .arg(reference, QString::number(m_content->planNumber));
}

void HandoutPage::savePdf()
{
    emit contentWanted();
    if (!m_view->document()) {
        emit said(m_sentence->text());
        return;
    }
    const auto file = m_services.prompts.placeForPdf(this, suggestedName());
    if (!file) {
        return;
    }
    if (const auto written = writePdf(*m_view->document(), *file); !written) {
        m_services.prompts.tell(this, errorText(written.error(), m_services.text));
        return;
    }
    emit handedOut(Medium::pdf);
    emit said(tr("Saved as %1.").arg(*file));
}

void HandoutPage::print()
{
    emit contentWanted();
    if (!m_view->document()) {
        emit said(m_sentence->text());
        return;
    }
    const HandoutDocument document = *m_view->document();
    QPrinter printer(QPrinter::HighResolution);
    prepare(printer, document);
    QPrintDialog dialog(&printer, this);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    dialog.setMinMax(1, document.pageCount());
    dialog.setFromTo(1, document.pageCount());
    dialog.setPrintRange(QAbstractPrintDialog::AllPages);
    if (dialog.exec() != QDialog::Accepted) {
        return;
    }
    if (const auto printed = printHandout(printer, document); !printed) {
        m_services.prompts.tell(this, errorText(printed.error(), m_services.text));
        return;
    }
    emit handedOut(Medium::paper);
    emit said(tr("Sent to the printer."));
}

} // namespace quadrille::app
