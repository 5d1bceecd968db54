// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/temp_store.h"

#include "db/failure.h"
#include "db/sealed_file.h"

#include <QDir>
#include <QFile>

#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

class SealedFile : public testing::Test
{
protected:
    QString at(const char* name) const { return QDir(temp.folder()).filePath(QLatin1String(name)); }
    static void write(const QString& path, const QByteArray& bytes)
    {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
        EXPECT_EQ(file.write(bytes), bytes.size());
    }
    static QByteArray read(const QString& path)
    {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }
    QByteArray seal(const QByteArray& content)
    {
        write(plain, content);
        write(sealed, {});
        sealFile(plain, sealed, words, leastSealCost());
        return read(sealed);
    }
    std::optional<ErrorCode> codeOfOpening(const QByteArray& bytes,
                                           const std::string& passphrase = words)
    {
        write(sealed, bytes);
        write(opened, {});
        try {
            unsealFile(sealed, opened, passphrase);
        } catch (const Failure& failure) {
            return failure.error().code;
        }
        return std::nullopt;
    }

    static constexpr const char* words = "four quiet words";
    static constexpr qsizetype chunk = 64 * 1024;
    tests::TempStore temp;
    const QString plain = at("plain");
    const QString sealed = at("sealed");
    const QString opened = at("opened");
};

TEST_F(SealedFile, ComesBackByteForByteWhateverItsLength)
{
    for (const qsizetype size :
         {qsizetype(0), qsizetype(1), chunk - 1, chunk, chunk + 1, 3 * chunk, 3 * chunk + 7}) {
        QByteArray content(size, '\0');
        for (qsizetype i = 0; i < size; ++i) {
            content[i] = static_cast<char>(i * 31 + i / 256);
        }
        EXPECT_EQ(codeOfOpening(seal(content)), std::nullopt) << size;
        EXPECT_EQ(read(opened), content) << size;
    }
}

TEST_F(SealedFile, NeverLooksTheSameTwice)
{
    EXPECT_NE(seal("the same"), seal("the same"));
}

TEST_F(SealedFile, TellsAWrongPassphrase)
{
    const QByteArray bytes = seal("secret");
    EXPECT_EQ(codeOfOpening(bytes, "four quiet word"), ErrorCode::wrongPassphrase);
    EXPECT_EQ(codeOfOpening(bytes, ""), ErrorCode::wrongPassphrase);
}

TEST_F(SealedFile, RecognisesEveryCut)
{
    const QByteArray bytes = seal(QByteArray(chunk + 100, 'x'));
    for (const qsizetype length :
         {qsizetype(0), qsizetype(7), qsizetype(50), qsizetype(90), qsizetype(100), qsizetype(120),
          chunk, bytes.size() - 118, bytes.size() - 117, bytes.size() - 17, bytes.size() - 1}) {
        EXPECT_EQ(codeOfOpening(bytes.left(length)), ErrorCode::backupDamaged) << length;
    }
    EXPECT_EQ(codeOfOpening(bytes + 'x'), ErrorCode::backupDamaged);
}

TEST_F(SealedFile, RecognisesAnyAlteredByte)
{
    const QByteArray bytes = seal("some content that matters");
    for (qsizetype i = 0; i < bytes.size(); ++i) {
        if (i >= 16 && i < 32) {
            continue; // what a guess costs: any other figure makes another key, tried below
        }
        QByteArray altered = bytes;
        altered[i] = static_cast<char>(altered[i] ^ 1);
        const auto code = codeOfOpening(altered);
        EXPECT_TRUE(code == ErrorCode::backupDamaged || code == ErrorCode::wrongPassphrase) << i;
    }
    QByteArray costly = bytes;
    costly[31] = char(0x7f); // asks for 2^62 bytes of memory
    EXPECT_EQ(codeOfOpening(costly), ErrorCode::backupDamaged);
    QByteArray other = bytes;
    other[16] = char(other[16] + 1); // one pass more
    EXPECT_EQ(codeOfOpening(other), ErrorCode::wrongPassphrase);
}

TEST_F(SealedFile, RecognisesChunksInAnotherOrder)
{
    const QByteArray bytes = seal(QByteArray(chunk, 'a') + QByteArray(chunk, 'b') + "end");
    const qsizetype sealedChunk = chunk + 17; // XChaCha20-Poly1305 stream: 17 bytes a chunk
    const qsizetype start = bytes.size() - 2 * sealedChunk - (3 + 17);
    const QByteArray swapped = bytes.left(start) + bytes.mid(start + sealedChunk, sealedChunk) +
                               bytes.mid(start, sealedChunk) + bytes.mid(start + 2 * sealedChunk);
    ASSERT_EQ(swapped.size(), bytes.size());
    EXPECT_EQ(codeOfOpening(swapped), ErrorCode::backupDamaged);
}

} // namespace
} // namespace quadrille::db
