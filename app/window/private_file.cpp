// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/private_file.h"

#include <QSaveFile>

namespace quadrille::app
{

Result<void> writePrivateFile(const QString& file, const QByteArray& content)
{
    QSaveFile out(file);
    const bool written = out.open(QIODevice::WriteOnly) &&
                         out.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner) &&
                         out.write(content) == content.size() && out.commit();
    if (!written) {
        return Error{.code = ErrorCode::cannotWrite,
                     .subject = file.toStdString(),
                     .detail = out.errorString().toStdString()};
    }
    return {};
}

} // namespace quadrille::app
